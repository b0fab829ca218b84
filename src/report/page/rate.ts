import { asEstimate, bounds, count, exact, intervalName, number } from '../../study/format.js';
import type { RateResults } from '../../study/rate/results.js';
import { columns, filled, type PageTable, percent } from '../columns.js';
import { triedAt } from '../constraint.js';
import { byUse, USED_NOTE, usedColumns } from '../tables/bottlenecks.js';
import { constraintFindings, constraintTables } from './constraint.js';
import { type Figure, noteOf, origin, type PageContent } from './page.js';

/** The page of a rate study. */
export function ratePage(results: RateResults): PageContent {
  const { scenario, answer, ramp, replications, mostReplications, plannedPerDay } = results;
  return {
    scenario: scenario.name,
    answer: answer.sentence,
    headline: headline(results),
    findings: [...constraintFindings(results.constraint, triedAt(results)), ...findings(results)],
    costsAndDates: [ramp.sentence],
    assumptions: assumptions(results),
    facts: origin(results, [
      ['Highest rate of the plan', `${plannedPerDay} a day`],
      ['Replications', `${exact(replications)} a rate, up to ${exact(mostReplications)}`],
    ]),
    tables: filled([
      rates(results),
      ...constraintTables(results.constraint, triedAt(results)),
      ...usedAt(results.constraint),
      usedByRate(results),
      rampTable(results),
    ]),
    more: 'All of these numbers are in results.json and the CSV files beside this page.',
  };
}

function headline({ answer: { highestPerDay }, points, arithmetic, grid, level }: RateResults): Figure[] {
  const best = points.find(({ perDay }) => perDay === highestPerDay);
  return [
    {
      what: 'Highest rate that holds, units a working day',
      value: highestPerDay === null ? 'none' : String(highestPerDay),
      interval:
        best === undefined
          ? `none from ${grid.from} on`
          : `${best.keptUp.count} of ${count(best.replications, 'replication')} keep up, ` +
            `${intervalName(level)} ${bounds(asEstimate(best.keptUp), 100)} %`,
    },
    {
      what: 'Ceiling by arithmetic',
      value: arithmetic === null ? 'none' : number(arithmetic.perDay),
      interval: arithmetic === null ? 'nothing limits' : arithmetic.name,
    },
  ];
}

function findings({ points, changes, answer: { contradictions } }: RateResults): string[] {
  return [
    ...points
      .filter(({ verdict }) => verdict !== 'holds')
      .slice(0, 1)
      .map(
        ({ perDay, why, keptUp, replications }) =>
          `${perDay} a day is not seen to hold: ${exact(keptUp.count)} of ` +
          `${count(replications, 'replication')} keep up; ${why}.`,
      ),
    ...changes.map(
      ({ fromPerDay, toPerDay, before, after }) =>
        `Between ${fromPerDay} and ${toPerDay} a day what is used most changes from "${before}" to ` +
        `"${after}".`,
    ),
    ...contradictions.map(
      (perDay) =>
        `${perDay} a day holds, though a lower rate does not: more replications would tell which is right.`,
    ),
  ];
}

function assumptions({ scenario, window, shortfallAllowed, level, sure }: RateResults): string[] {
  return [
    ...noteOf(scenario),
    `A run keeps up when at least ${number(100 * (1 - shortfallAllowed))} % of the units released in the ` +
      `window are shipped in it; a rate holds when with ${number(100 * level)} % confidence at least ` +
      `${number(100 * sure)} % of runs keep up, the number of open units (released and not yet out) does ` +
      'not grow, and no run ends in gridlock.',
    `Each rate is watched for ${count(window.weeks, 'week')} from ${window.from}, after ` +
      `${count(window.settleWeeks, 'week')} to fill an empty floor. Quantity, opening, build list and due ` +
      'dates of the programme are left out; calendars, outages and deliveries are as the scenario gives ' +
      'them.',
    'All rates see the same chance. The search assumes that any rate below one that holds also holds; the ' +
      'rates that were run were checked for it.',
    'Intervals show how far chance inside the model moves the figures. They do not cover errors in the ' +
      'inputs.',
  ];
}

function rates({ points, level }: RateResults): PageTable {
  return {
    id: 'rates',
    title: 'Rates',
    note:
      `In brackets: ${intervalName(level)}. Growth is that of open units (released and not yet out), in ` +
      'units a week.',
    ...columns(points, [
      ['a day', 'perDay'],
      ['verdict', ({ verdict, why }) => `${verdict}: ${why}`],
      ['replications', 'replications'],
      ['keep up, %', ({ keptUp }) => percent(asEstimate(keptUp))],
      ['growth', 'drift'],
      ['shipped a day', 'shippedPerDay'],
      ['WIP, units', 'wip'],
      ['lead time, days', 'leadDays'],
    ]),
  };
}

/** What is used most at the rate at which things were tried. */
function usedAt(constraint: RateResults['constraint']): PageTable[] {
  const judged = constraint?.judged ?? null;
  if (constraint === null || judged === null) return [];
  return [
    {
      id: 'bottlenecks',
      title: `What is used most at ${constraint.perDay} a day`,
      note: `${USED_NOTE} From ${judged.from} to ${judged.to}, ${count(judged.replications, 'replication')}.`,
      ...columns(byUse(judged.bottlenecks, []), usedColumns()),
    },
  ];
}

function usedByRate({ points, level }: RateResults): PageTable {
  return {
    id: 'used',
    title: 'What is used most, by rate',
    note:
      'Share of replications in which it has the highest utilisation, %; in brackets: ' +
      `${intervalName(level)}. A hint: what was tried tells what stops it.`,
    ...columns(
      points.flatMap(({ perDay, stops }) => stops.map((stop) => ({ ...stop, perDay }))),
      [
        ['a day', 'perDay'],
        ['used most', 'name'],
        ['kind', 'kind'],
        ['site', 'site'],
        ['% of replications', ({ share }) => percent(asEstimate(share))],
        ['replications', ({ share }) => exact(share.n)],
      ],
    ),
  };
}

function rampTable({ ramp, level }: RateResults): PageTable {
  return {
    id: 'ramp',
    title: 'When the last phase may begin',
    note: `${ramp.perDay ?? 'No rate'} a day from the given day on. In brackets: ${intervalName(level)}.`,
    ...columns(ramp.tried, [
      ['last phase begins', 'begins'],
      ['weeks after the start', 'week'],
      ['verdict', ({ verdict, why }) => `${verdict}: ${why}`],
      ['replications', 'replications'],
      ['keep up, %', ({ keptUp }) => percent(asEstimate(keptUp))],
      ['growth of open units a week', 'drift'],
    ]),
  };
}
