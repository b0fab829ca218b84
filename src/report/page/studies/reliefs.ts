import {
  bounds,
  count,
  exact,
  intervalName,
  mean,
  number,
  short,
  withInterval,
} from '../../../study/format.js';
import { each, eachWorking, unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults, VariedResult } from '../../../study/reliefs/results.js';
import { type Estimate, negated } from '../../../study/statistics/estimate.js';
import { columns, filled, type PageTable } from '../../columns.js';
import { onEveryShift } from '../../constraint.js';
import { reliefsFirst } from '../../first/reliefs.js';
import { countedIn, leftText, levelsText, savedText } from '../../reliefs.js';
import { type Cell, estimated, valued, written } from '../../sheets/cells.js';
import { NO_PRICES } from '../../tables/costs.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { inputsNote, SAME_BASE, valuesTold } from '../rests.js';
import { groupsTable, harmNotes } from './reliefs-groups.js';
import { hasPrices, priceColumns, pricesTable } from './reliefs-prices.js';

const FINDINGS = 5;

/** One page: the best relief, how sure that is, what to measure next; then every relief and assumption. */
export function reliefsPage(results: ReliefsResults): PageContent {
  const { scenario, reliefs, replications, answer, rate, skipped, rateUnit } = results,
    units = unitsEach(rateUnit),
    left = leftText(results);
  return {
    scenario: scenario.name,
    first: reliefsFirst(results),
    losses: [],
    inFull: said(answer.sentence, reliefs),
    findings: reliefs
      .slice(0, FINDINGS)
      .map(({ rank, text, gain }) => `${rank}. ${onEveryShift(text)}: ${withInterval(gain)} ${units}.`),
    costsAndDates: costs(results),
    values: valuesTold(results.assumptions.map((one) => ({ ...one, note: null }))),
    assumptions: [
      ...noteOf(scenario),
      `Gains are differences of two runs with the same chance, counted ${countedIn(results)}. Each relief ` +
        'is tried by itself: two together may gain more or less than their sum.',
      `${savedText(results)}.`,
      ...harmNotes(results),
      'Changes dropped early have fewer replications and wider intervals; the same replications decided ' +
        'that they were dropped.',
      'A guess is varied by 20 % to either side, an estimate by 10 %, whole numbers by 1 at least: our own ' +
        'convention.',
      ...(left === null ? [] : [`${left}; see Not varied below.`]),
      ...(skipped.length === 0
        ? []
        : [`${count(skipped.length, 'change')} could not be made; see Left out below.`]),
      hasPrices(results)
        ? 'What a change itself costs is what the scenario says of it; it is in no figure but those by price.'
        : 'What a change itself costs (training, building, buying) is in none of the figures.',
      inputsNote(results.eachLevel.final, replications),
      SAME_BASE,
    ],
    facts: origin(results, [
      [
        'Replications',
        `up to ${exact(replications)} builds of each change, and as many fresh ones of the best`,
      ],
      ['Warm-up', 'as in the scenario'],
      [
        'Rate',
        rate.set === null ? 'as in the scenario' : `${number(rate.set)} ${eachWorking(rateUnit)}, by --rate`,
      ],
    ]),
    tables: filled([
      reliefsTable(results),
      groupsTable(results),
      pricesTable(results),
      assumptions(results),
      leftTable(results),
      skippedTable(results),
    ]),
    more: 'All of these numbers are in results.json, reliefs.csv and assumptions.csv beside this page.',
  };
}

function costs({ base: { costPerUnit, currency }, reliefs, rateUnit }: ReliefsResults): string[] {
  if (costPerUnit === null) return [NO_PRICES];
  const money = currency ?? '';
  const ranked = reliefs
    .flatMap(({ rankPerCost, costPerUnit: change, ...rest }) =>
      rankPerCost === null || rankPerCost > FINDINGS || change === null
        ? []
        : [{ ...rest, rankPerCost, change }],
    )
    .sort((a, b) => a.rankPerCost - b.rankPerCost);
  return [
    `A unit of the base costs ${withInterval(costPerUnit, money)}. The cost of making the change itself ` +
      '(training, building, buying) is not included.',
    ...ranked.map(
      ({ rankPerCost, text, change, gainPerCost }) =>
        `By cost ${rankPerCost}. ${onEveryShift(text)}: a unit costs ${toldChange(change, money)}` +
        (gainPerCost === null ? '.' : `, ${short(gainPerCost)} units ${each(rateUnit)} for each ${money}.`),
    ),
  ];
}

/** `903 EUR less (720 to 1,086)`: before what the change itself costs. */
function toldChange(change: Estimate, money: string): string {
  const isLess = change.mean < 0,
    size = isLess ? negated(change) : change;
  return `${mean(size)} ${money} ${isLess ? 'less' : 'more'} (${bounds(size)})`;
}

/** With a person on every shift where the answer says one person. */
const said = (sentence: string, reliefs: ReliefsResults['reliefs']): string =>
  reliefs
    .filter(({ kind }) => kind === 'person')
    .reduce((told, { text }) => told.replaceAll(text, () => onEveryShift(text)), sentence);

function reliefsTable(results: ReliefsResults): PageTable {
  return {
    id: 'reliefs',
    title: 'Reliefs',
    note:
      `Gain: ${unitsEach(results.rateUnit)}; in brackets: ${levelsText(results)}. Cost: change of the cost ` +
      'of a unit, before what the change itself costs. Those with fresh replications stand in the order by ' +
      'which they were chosen.',
    ...columns(results.reliefs, [
      ['Relief', ({ text }) => onEveryShift(text)],
      ['Kind', 'kind'],
      ['Gain', 'gain'],
      ['Cost', 'costPerUnit'],
      ['Gain per cost', 'gainPerCost'],
      ['Rank by cost', 'rankPerCost'],
      ...priceColumns(results),
      [
        'Replications',
        ({ replications, isFresh }) =>
          valued(`${exact(replications)}${isFresh ? ' fresh' : ''}`, replications),
      ],
      ['Out early', 'out'],
    ]),
  };
}

function assumptions({ assumptions: varied, eachLevel, rateUnit }: ReliefsResults): PageTable {
  const value = (end: VariedResult | null): Cell => written(end?.value ?? 'cannot be'),
    gain = (end: VariedResult | null): Cell => (end === null ? '' : estimated(end.gain));
  return {
    id: 'assumptions',
    title: 'Which number to measure next',
    note: `Gain: ${unitsEach(rateUnit)}; in brackets: ${intervalName(eachLevel.assumptions)}.`,
    ...columns(varied, [
      ['Value', 'words'],
      ['In the file', 'path'],
      ['Basis', 'basis'],
      ['Now', (each) => written(each.value)],
      ['Low', ({ low }) => value(low)],
      ['Gain at low', ({ low }) => gain(low)],
      ['High', ({ high }) => value(high)],
      ['Gain at high', ({ high }) => gain(high)],
    ]),
  };
}

function leftTable({ values: { left } }: ReliefsResults): PageTable {
  return {
    id: 'not-varied',
    title: 'Not varied',
    note: 'Guesses and estimates in the order in which they would have come next.',
    ...columns(left, [
      ['Value', 'words'],
      ['In the file', 'path'],
      ['Basis', 'basis'],
      ['Now', (each) => written(each.value)],
    ]),
  };
}

function skippedTable({ skipped }: ReliefsResults): PageTable {
  return {
    id: 'skipped',
    title: 'Left out',
    note: 'Changes that could not be made.',
    ...columns(skipped, [
      ['Change', 'what'],
      ['Why', 'why'],
    ]),
  };
}
