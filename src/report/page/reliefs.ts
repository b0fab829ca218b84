import type { ReliefsResults, VariedResult } from '../../study/reliefs/results.js';
import { bounds, intervalName, mean, number, short, withInterval } from '../../study/format.js';
import { renderPage, type Picture } from './page.js';
import type { PageTable } from '../tables/overall.js';
import { countedIn, savedText } from '../terminal/reliefs.js';

const FINDINGS = 5;

/** One page: the best relief, how sure that is, what to measure next; then every relief and assumption. */
export function reliefsPage(results: ReliefsResults, pictures: readonly Picture[]): string {
  const { scenario, base, reliefs, seed, program, version, replications, answer, rate, skipped } = results,
    [best] = reliefs;
  return renderPage({
    scenario: scenario.name,
    answer: answer.sentence,
    headline: [
      ...(best === undefined
        ? []
        : [
            {
              what: 'Best single relief, units a working day more',
              value: mean(best.gain),
              interval: `${intervalName(best.gain.level)} ${bounds(best.gain)}, ${best.replications} replications`,
            },
          ]),
      {
        what: 'Shipped without it, units a working day',
        value: mean(base.throughput),
        interval: `${intervalName(base.throughput.level)} ${bounds(base.throughput)}`,
      },
    ],
    pictures,
    findings: reliefs
      .slice(0, FINDINGS)
      .map((each) => `${each.rank}. ${each.text}: ${withInterval(each.gain)} units a working day.`),
    costsAndDates:
      base.costPerUnit === null
        ? ['Cost: the scenario has no prices.']
        : [
            `A unit of the base costs ${withInterval(base.costPerUnit, base.currency ?? '')}. What a ` +
              'relief itself costs to bring about (training, building, buying) is not in it.',
            ...reliefs
              .filter(({ rankPerCost }) => rankPerCost !== null && rankPerCost <= FINDINGS)
              .sort((a, b) => a.rankPerCost! - b.rankPerCost!)
              .map(
                (each) =>
                  `By cost ${each.rankPerCost}. ${each.text}: a unit costs ` +
                  `${each.costPerUnit === null ? '' : short(each.costPerUnit)} ` +
                  `more${each.gainPerCost === null ? '' : `, ${short(each.gainPerCost)} units a day for each ${base.currency ?? ''}`}.`,
              ),
          ],
    assumptions: [
      `Gains are differences of two runs with the same chance, counted ${countedIn(results)}. Each ` +
        'relief is tried by itself: two together may gain more or less than their sum.',
      savedText(results) + '.',
      'Those that were out early have fewer replications and wider intervals; that they were out ' +
        'was decided by the same replications.',
      'A guess is varied by 20 % to either side, an estimate by 10 %, whole numbers by 1 at least: ' +
        'our own convention.',
      ...(skipped.length === 0
        ? []
        : [`${skipped.length} changes could not be made; they stand under Left out below.`]),
    ],
    facts: [
      ['Scenario', scenario.name],
      ['File', scenario.file],
      ['Digest', scenario.digest],
      ['Seed', seed],
      ['Replications', `up to ${replications}`],
      ['Rate', rate.set === null ? 'as in the scenario' : `${number(rate.set)} a working day, by --rate`],
      ['Program', `rateproof ${program}, results version ${version}`],
    ],
    tables: tables(results).filter(({ rows }) => rows.length > 0),
    more: 'All of it is in results.json, reliefs.csv and assumptions.csv beside this page.',
  });
}

function tables({ reliefs, assumptions, skipped, eachLevel }: ReliefsResults): PageTable[] {
  const end = (each: VariedResult | null): string[] =>
    each === null ? ['cannot be', ''] : [each.value, short(each.gain)];
  return [
    {
      id: 'reliefs',
      title: 'Reliefs',
      note:
        `Gain: units a working day; in brackets: ${intervalName(eachLevel.reliefs)}. Cost: change of ` +
        'the cost of a unit.',
      head: ['Relief', 'Kind', 'Gain', 'Cost', 'Gain per cost', 'Rank by cost', 'Replications', 'Out early'],
      rows: reliefs.map((each) => [
        each.text,
        each.kind,
        short(each.gain),
        each.costPerUnit === null ? '' : short(each.costPerUnit),
        each.gainPerCost === null ? '' : short(each.gainPerCost),
        each.rankPerCost === null ? '' : String(each.rankPerCost),
        String(each.replications),
        each.out ?? '',
      ]),
    },
    {
      id: 'assumptions',
      title: 'Which number to measure next',
      note: `Gain: units a working day; in brackets: ${intervalName(eachLevel.assumptions)}.`,
      head: ['Value', 'Basis', 'Now', 'Low', 'Gain at low', 'High', 'Gain at high'],
      rows: assumptions.map((each) => [
        each.path,
        each.basis,
        each.value,
        ...end(each.low),
        ...end(each.high),
      ]),
    },
    {
      id: 'skipped',
      title: 'Left out',
      note: 'Changes that could not be made.',
      head: ['Change', 'Why'],
      rows: skipped.map(({ what, why }) => [what, why]),
    },
  ];
}
