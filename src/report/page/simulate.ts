import type { DateQuantile, Estimate, Results } from '../../study/simulate/results.js';
import { counts } from '../tables/assumptions.js';
import {
  bounds,
  count,
  intervalName,
  mean,
  number,
  percentWithInterval,
  withInterval,
} from '../../study/format.js';
import { renderPage, type Figure, type Picture } from './page.js';
import { pageTables } from '../tables/overall.js';

/**
 * One HTML page that needs no other file: first the answer, one number, one picture, findings, dates and
 * assumptions; then every picture and table. The first picture is the one of the first page.
 */
export function page(results: Results, pictures: readonly Picture[]): string {
  return renderPage({
    scenario: results.scenario.name,
    answer: results.answer.sentence,
    headline: headline(results),
    pictures,
    findings:
      results.findings.length === 0
        ? ['Nothing that stops the build was found.']
        : results.findings.map(
            (finding) =>
              `${sentence(finding.text)} (in ${finding.replications} of ` +
              `${count(results.replications, 'replication')})`,
          ),
    costsAndDates: [
      ...(results.lastUnit.length === 0
        ? ['The programme has no last unit, so there is no date.']
        : [...results.lastUnit.map((each) => dateText(each, results.level)), ...dueText(results)]),
      costText(results),
    ],
    assumptions: assumptions(results),
    facts: facts(results),
    tables: pageTables(results),
    more: 'All of it, and more, is in results.json, series.csv, stations.csv and runs.csv beside this page.',
  });
}

function headline({ answer, throughput }: Results): Figure[] {
  const { askedPerDay, heldPerDay } = answer;
  const main =
    heldPerDay === null
      ? figure('Shipped, units a working day, whole run', throughput.perDay)
      : figure('Shipped, units a working day', heldPerDay);
  return askedPerDay === null
    ? [main]
    : [
        main,
        {
          what: 'Asked, units a working day',
          value: number(askedPerDay),
          interval: 'the highest rate of the plan',
        },
      ];
}

function figure(what: string, estimate: Estimate): Figure {
  return {
    what,
    value: mean(estimate),
    interval:
      estimate.low === null
        ? 'no interval, 1 replication'
        : `${intervalName(estimate.level)} ${bounds(estimate)}, ${count(estimate.n, 'replication')}`,
  };
}

function dateText({ p, date, low, high, why }: DateQuantile, level: number): string {
  const name = `Last unit out, P${number(p * 100)}`;
  if (date === null) return `${name}: not known${why === null ? '' : `; ${why}`}.`;
  return `${name}: ${date}${low === null || high === null ? `; no interval${why === null ? '' : `, ${why}`}` : ` (${intervalName(level)} ${low} to ${high})`}.`;
}

function dueText({ due }: Results): string[] {
  if (due === null || due.late.n === 0) return [];
  return [
    `Late against their due dates: ${percentWithInterval(due.late)} of ` +
      `units${due.daysLate.n === 0 ? '' : `, those shipped late by ${withInterval(due.daysLate, 'days')} in the mean`}.`,
  ];
}

function costText({ costs }: Results): string {
  if (costs === null) return 'Cost: the scenario has no prices.';
  return (
    `A unit shipped costs ${withInterval(costs.perUnit, costs.currency)}, of it ` +
    `${withInterval(costs.rework.costPerUnit, costs.currency)} for rework.`
  );
}

/** What could turn the answer round, as far as the results can know. */
function assumptions({
  scenario,
  replications,
  level,
  programme,
  assumptions: said,
  costs,
}: Results): string[] {
  return [
    ...(scenario.note === null ? [] : [`The scenario says of itself: ${scenario.note}`]),
    'Work times and chances of defects are as the scenario gives them. They were not compared ' +
      'with a record of the real plants; if they are wrong, so is the answer.',
    ...(said.length === 0
      ? []
      : [
          `Of ${count(said.length, 'value')} the scenario says where they come from: ${counts(said)}. ` +
            'They stand under Assumptions below.',
        ]),
    'Intervals tell how far chance inside the model moves the means ' +
      `(${replications < 2 ? 'none with 1 replication' : `${intervalName(level)}, ${count(replications, 'replication')}`}). They tell nothing about errors in the inputs, and nothing about the spread of single weeks or units.`,
    'People, trucks and parts follow their rules and calendars without exception: nobody ' +
      'improvises, lends a hand to another crew, or works longer to catch up, unless the scenario says so.',
    ...(costs === null
      ? []
      : [
          'The cost of a unit has in it what the scenario gives a price, and nothing else: no material ' +
            'of the unit itself, no tax, no interest beyond that. Prices were not compared with any account.',
        ]),
    `Left out: ${costs === null ? 'cost, and ' : ''}everything else that the scenario does not name.`,
    programme.kind === 'programme'
      ? `Observed: ${count(Math.round(programme.observedDays), 'day')} from ${programme.start}, the ` +
        'ramp included.'
      : `Observed: ${count(Math.round(programme.observedDays), 'day')} of a steady run, warm-up left out.`,
  ];
}

function facts({ scenario, seed, program, version, replications, programme }: Results): [string, string][] {
  return [
    ['Scenario', scenario.name],
    ['File', scenario.file],
    ['Digest', scenario.digest],
    ['Seed', seed],
    ['Replications', String(replications)],
    ['Program', `rateproof ${program}, results version ${version}`],
    ['Time zone', programme.zone],
  ];
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
