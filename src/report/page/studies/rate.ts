import { asEstimate, capital, count, exact, intervalName, number } from '../../../study/format.js';
import { countedText } from '../../../study/loads/words.js';
import { each, inUnit, type PlannersUnit, rateText } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { columns, filled, type PageTable } from '../../columns.js';
import { eachShift, triedAt } from '../../constraint.js';
import { rateFirst } from '../../first/rate.js';
import { type Cell, counted, day, estimated, type Part, percent } from '../../sheets/cells.js';
import { byUse, USED_NOTE, usedColumns } from '../../tables/bottlenecks.js';
import { constraintFindings, constraintTables, lossesTold } from '../constraint.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { guessesTable, inputsNote, SAME_BASE, sourcesElsewhere } from '../rests.js';

/** The page of a rate study. */
export function ratePage(results: RateResults): PageContent {
  const {
      scenario,
      answer,
      ramp,
      replications,
      mostReplications,
      plannedPerDay,
      rateUnit,
      constraint,
      window,
    } = results,
    at = triedAt(results);
  return {
    scenario: scenario.name,
    first: rateFirst(results),
    losses: lossesTold(constraint, at),
    inFull: constraint === null ? answer.sentence : eachShift(answer.sentence, constraint),
    findings: [...constraintFindings(constraint, at), ...findings(results)],
    costsAndDates: [ramp.sentence],
    values: [],
    assumptions: assumptions(results),
    facts: origin(results, [
      ['Highest rate of the plan', rateText(plannedPerDay, rateUnit)],
      [
        'Replications',
        `up to ${exact(replications)} builds a rate, fewer where that is sure, ` +
          `${exact(mostReplications)} where not settled`,
      ],
      [
        'Warm-up',
        `${count(window.settleWeeks, 'week')} to fill an empty floor, then ` +
          `${count(window.weeks, 'week')} are judged`,
      ],
    ]),
    tables: filled([
      rates(results),
      ...constraintTables(constraint, at),
      guessesTable(results.weakest, capital(at ?? '')),
      ...usedAt(results),
      usedByRate(results),
      rampTable(results),
    ]),
    more: 'All of these numbers are in results.json and the CSV files beside this page.',
  };
}

function findings({ points, changes, rateUnit, answer: { contradictions } }: RateResults): string[] {
  const rate = (perDay: number): string => rateText(perDay, rateUnit);
  return [
    ...points
      .filter(({ verdict }) => verdict !== 'holds')
      .slice(0, 1)
      .map(({ perDay, why }) => `${rate(perDay)} does not surely hold: ${why}.`),
    ...changes.map(
      ({ fromPerDay, toPerDay, before, after }) =>
        `Between ${exact(inUnit(fromPerDay, rateUnit))} and ${rate(toPerDay)} what is used most changes ` +
        `from "${before}" to "${after}".`,
    ),
    ...contradictions.map(
      (perDay) =>
        `${rate(perDay)} holds, though a lower rate does not: more replications would tell which is right.`,
    ),
  ];
}

function assumptions({
  scenario,
  window,
  shortfallAllowed,
  level,
  sure,
  counting,
  replications,
  mostReplications,
}: RateResults): string[] {
  return [
    ...noteOf(scenario),
    sourcesElsewhere(scenario.file),
    `A build keeps up when at least ${number(100 * (1 - shortfallAllowed))} % of the units released in the ` +
      `window are shipped in it${countedText(counting)}; a rate holds when with ` +
      `${number(100 * level)} % confidence at least ${number(100 * sure)} % of builds keep up, and if with ` +
      '99.9 % confidence as much is shipped in the long run when more is asked. With fewer than ' +
      `${count(replications, 'build')} only what is far surer is told. A build that stands still does not ` +
      'keep up.',
    `Each rate is watched for ${count(window.weeks, 'week')} from ${window.from}, after ` +
      `${count(window.settleWeeks, 'week')} to fill an empty floor. Quantity, opening, build list and due ` +
      'dates of the programme are left out; calendars, outages and deliveries are as the scenario gives ' +
      'them.',
    'All rates see the same chance. The search assumes that any rate below one that holds also holds; the ' +
      'rates that were run were checked for it.',
    inputsNote(level, mostReplications, 'up to '),
    SAME_BASE,
  ];
}

function rates({ points, level, rateUnit }: RateResults): PageTable {
  return {
    id: 'rates',
    title: 'Rates',
    note:
      `In brackets: ${intervalName(level)}. Can ship: what is surely shipped in the long run when more ` +
      'than this rate is asked, with a confidence of 99.9 % on either side.',
    ...columns(points, [
      [each(rateUnit), ({ perDay }) => counted(inUnit(perDay, rateUnit))],
      ['verdict', ({ verdict, why }) => `${verdict}: ${why}`],
      ['replications', 'replications'],
      ['keep up, %', ({ keptUp }) => percent(asEstimate(keptUp))],
      [`shipped ${each(rateUnit)}`, ({ shippedPerDay }) => estimated(shippedPerDay, rateUnit.workingDays)],
      [`can ship ${each(rateUnit)}`, ({ canShip }) => canShipCell(canShip, rateUnit)],
      ['WIP, units', 'wip'],
      ['lead time, days', 'leadDays'],
    ]),
  };
}

function canShipCell({ least, most }: RatePoint['canShip'], unit: PlannersUnit): Cell {
  const part = (name: string, perDay: number | null): Part => ({
    name,
    value: perDay === null ? null : inUnit(perDay, unit),
    form: 'number',
  });
  return {
    text: canShipText({ least, most }, unit),
    parts: [part('at least', least), part('at most', most)],
  };
}

function canShipText({ least, most }: RatePoint['canShip'], unit: PlannersUnit): string {
  const rate = (perDay: number): string => number(inUnit(perDay, unit));
  if (least === null) return most === null ? '' : `at most ${rate(most)}`;
  return most === null ? `at least ${rate(least)}` : `${rate(least)} to ${rate(most)}`;
}

/** What is used most at the rate at which things were tried. */
function usedAt({ constraint, rateUnit }: RateResults): PageTable[] {
  const judged = constraint?.judged ?? null;
  if (constraint === null || judged === null) return [];
  return [
    {
      id: 'bottlenecks',
      title: `What is used most at ${rateText(constraint.perDay, rateUnit)}`,
      note: `${USED_NOTE} From ${judged.from} to ${judged.to}, ${count(judged.replications, 'replication')}.`,
      ...columns(byUse(judged.bottlenecks, []), usedColumns()),
    },
  ];
}

function usedByRate({ points, level, rateUnit }: RateResults): PageTable {
  return {
    id: 'used',
    title: 'What is used most, by rate',
    note:
      'Share of replications in which it has the highest utilisation, %; in brackets: ' +
      `${intervalName(level)}. A hint: what was tried tells what stops it.`,
    ...columns(
      points.flatMap(({ perDay, stops }) => stops.map((stop) => ({ ...stop, perDay }))),
      [
        [each(rateUnit), ({ perDay }) => counted(inUnit(perDay, rateUnit))],
        ['used most', 'name'],
        ['kind', 'kind'],
        ['site', 'site'],
        ['% of replications', ({ share }) => percent(asEstimate(share))],
        ['replications', ({ share }) => counted(share.n)],
      ],
    ),
  };
}

function rampTable({ ramp, level, rateUnit }: RateResults): PageTable {
  const rate = ramp.perDay === null ? `No rate ${each(rateUnit)}` : rateText(ramp.perDay, rateUnit);
  return {
    id: 'ramp',
    title: 'When the last phase may begin',
    note: `${rate} from the given day on. In brackets: ${intervalName(level)}.`,
    ...columns(ramp.tried, [
      ['last phase begins', ({ begins }) => day(begins)],
      ['weeks after the start', 'week'],
      ['verdict', ({ verdict, why }) => `${verdict}: ${why}`],
      ['replications', 'replications'],
      ['keep up, %', ({ keptUp }) => percent(asEstimate(keptUp))],
    ]),
  };
}
