import type { RateResults } from '../../study/rate/results.js';
import { asEstimate, bounds, count, intervalName, number, short } from '../../study/format.js';
import { renderPage, type Picture } from './page.js';
import type { PageTable } from '../tables/overall.js';

/** One HTML page that needs no other file. */
export function ratePage(results: RateResults, pictures: readonly Picture[]): string {
  const {
    scenario,
    answer,
    ramp,
    arithmetic,
    points,
    window,
    seed,
    program,
    version,
    replications,
    mostReplications,
    sure,
    level,
    shortfallAllowed,
    plannedPerDay,
  } = results;
  const best = points.find(({ perDay }) => perDay === answer.highestPerDay);
  return renderPage({
    scenario: scenario.name,
    answer: answer.sentence,
    headline: [
      {
        what: 'Highest rate that holds, units a working day',
        value: answer.highestPerDay === null ? 'none' : String(answer.highestPerDay),
        interval:
          best === undefined
            ? `none from ${results.grid.from} on`
            : `${best.keptUp.count} of ${count(best.replications, 'replication')} keep up, ` +
              `${intervalName(level)} ${bounds(asEstimate(best.keptUp), 100)} %`,
      },
      {
        what: 'Ceiling by arithmetic',
        value: arithmetic === null ? 'none' : number(arithmetic.perDay),
        interval: arithmetic === null ? 'nothing limits' : arithmetic.name,
      },
    ],
    pictures,
    findings: [
      ...points
        .filter(({ verdict }) => verdict !== 'holds')
        .slice(0, 1)
        .map(
          ({ perDay, why, keptUp, replications: n }) =>
            `${perDay} a day is not seen to hold: ${keptUp.count} of ${count(n, 'replication')} keep ` +
            `up; ${why}.`,
        ),
      ...results.changes.map(
        ({ fromPerDay, toPerDay, before, after }) =>
          `Between ${fromPerDay} and ${toPerDay} a day the constraint goes from "${before}" to "${after}".`,
      ),
      ...answer.contradictions.map(
        (perDay) =>
          `${perDay} a day holds, though a lower rate does not: more replications would tell which is right.`,
      ),
    ],
    costsAndDates: [ramp.sentence],
    assumptions: [
      ...(scenario.note === null ? [] : [`The scenario says of itself: ${scenario.note}`]),
      `A run keeps up when at least ${number(100 * (1 - shortfallAllowed))} % of the units ` +
        `released in the window are shipped in it; a rate holds when with ${number(100 * level)} % ` +
        `confidence at least ${number(100 * sure)} % of runs keep up, units released and not yet out ` +
        'do not become more, and none locks up.',
      `Each rate is watched for ${count(window.weeks, 'week')} from ${window.from}, after ` +
        `${count(window.settleWeeks, 'week')} to fill an empty floor. Quantity, opening, build list ` +
        'and due dates of the programme are left out; calendars, outages and deliveries are as the ' +
        'scenario gives them.',
      'All rates see the same chance. It is taken that a rate below one that holds would hold as ' +
        'well, and this was checked on what was run.',
      'Intervals tell how far chance inside the model moves the figures. They tell nothing about ' +
        'errors in the inputs.',
    ],
    facts: [
      ['Scenario', scenario.name],
      ['File', scenario.file],
      ['Digest', scenario.digest],
      ['Seed', seed],
      ['Highest rate of the plan', `${plannedPerDay} a day`],
      ['Replications', `${replications} a rate, up to ${mostReplications}`],
      ['Program', `rateproof ${program}, results version ${version}`],
    ],
    tables: [rates(results), constraints(results), rampTable(results)].filter(({ rows }) => rows.length > 0),
    more: 'All of it is in results.json and rates.csv beside this page.',
  });
}

function rates({ points, level }: RateResults): PageTable {
  return {
    id: 'rates',
    title: 'Rates',
    note:
      `In brackets: ${intervalName(level)}. Growth is that of open units (released and not yet ` +
      'out), in units a week.',
    head: [
      'a day',
      'verdict',
      'replications',
      'keep up, %',
      'growth',
      'shipped a day',
      'WIP, units',
      'lead time, days',
    ],
    rows: points.map((point) => [
      String(point.perDay),
      `${point.verdict}: ${point.why}`,
      String(point.replications),
      short(asEstimate(point.keptUp), 100),
      short(point.drift),
      short(point.shippedPerDay),
      short(point.wip),
      short(point.leadDays),
    ]),
  };
}

function constraints({ points, level }: RateResults): PageTable {
  return {
    id: 'constraints',
    title: 'What stops it',
    note:
      'Share of replications in which it has the highest utilisation, %; in brackets: ' +
      `${intervalName(level)}.`,
    head: ['a day', 'constraint', 'kind', 'site', '% of replications', 'replications'],
    rows: points.flatMap(({ perDay, stops }) =>
      stops.map(({ name, kind, site, share }) => [
        String(perDay),
        name,
        kind,
        site,
        short(asEstimate(share), 100),
        String(share.n),
      ]),
    ),
  };
}

function rampTable({ ramp, level }: RateResults): PageTable {
  return {
    id: 'ramp',
    title: 'When the last phase may begin',
    note: `${ramp.perDay ?? 'No rate'} a day from the given day on. In brackets: ${intervalName(level)}.`,
    head: [
      'last phase begins',
      'weeks after the start',
      'verdict',
      'replications',
      'keep up, %',
      'growth of open units a week',
    ],
    rows: ramp.tried.map((each) => [
      each.begins,
      String(each.week),
      `${each.verdict}: ${each.why}`,
      String(each.replications),
      short(asEstimate(each.keptUp), 100),
      short(each.drift),
    ]),
  };
}
