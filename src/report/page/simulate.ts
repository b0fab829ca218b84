import {
  capital,
  count,
  exact,
  intervalName,
  number,
  percentWithInterval,
  withInterval,
} from '../../study/format.js';
import type { DateQuantile } from '../../study/programme/dates.js';
import type { Results } from '../../study/simulate/results.js';
import { toldConstraint } from '../constraint.js';
import { simulateFirst } from '../first/simulate.js';
import { counts } from '../tables/assumptions.js';
import { NO_PRICES } from '../tables/costs.js';
import { constraintFindings } from './constraint.js';
import { noteOf, origin, type PageContent } from './page.js';
import { pageTables } from './tables.js';

/**
 * First the answer, one number, one picture, findings, dates and assumptions; then every picture and table.
 */
export function simulatePage(results: Results): PageContent {
  const { scenario, answer, replications, programme } = results;
  const found = [...constraintFindings(toldConstraint(results)), ...findings(results)];
  return {
    scenario: scenario.name,
    first: simulateFirst(results),
    inFull: answer.sentence,
    findings: found.length === 0 ? ['Nothing that stops the build was found.'] : found,
    costsAndDates: [
      ...dates(results),
      ...results.recoveries.map(({ sentence: said }) => said),
      costText(results),
    ],
    assumptions: assumptions(results),
    facts: [...origin(results, [['Replications', exact(replications)]]), ['Time zone', programme.zone]],
    tables: pageTables(results),
    more: 'All of these numbers, and more, are in results.json, and many in the CSV files beside this page.',
  };
}

function findings({ findings: all, replications }: Results): string[] {
  return all.map(
    ({ text, replications: of }) =>
      `${capital(text)} (in ${exact(of)} of ${count(replications, 'replication')})`,
  );
}

function dates({ lastUnit, level, due }: Results): string[] {
  if (lastUnit.length === 0) return ['The programme has no last unit, so there is no date.'];
  const days =
    due === null || due.daysLate.n === 0 ? '' : `, by ${withInterval(due.daysLate, 'days')} on average`;
  return [
    ...lastUnit.map((each) => dateText(each, level)),
    ...(due === null || due.late.n === 0
      ? []
      : [`Late against their due dates: ${percentWithInterval(due.late)} of units${days}.`]),
  ];
}

function dateText({ p, date, low, high, why }: DateQuantile, level: number): string {
  const name = `Last unit out, P${number(p * 100)}`,
    reason = why === null ? '' : why;
  if (date === null) return `${name}: not known${reason === '' ? '' : `; ${reason}`}.`;
  if (low === null || high === null)
    return `${name}: ${date}; no interval${reason === '' ? '' : `, ${reason}`}.`;
  return `${name}: ${date} (${intervalName(level)} ${low} to ${high}).`;
}

function costText({ costs }: Results): string {
  if (costs === null) return NO_PRICES;
  return (
    `A unit shipped costs ${withInterval(costs.perUnit, costs.currency)}, of which rework ` +
    `${withInterval(costs.rework.costPerUnit, costs.currency)}.`
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
  const interval =
    replications < 2
      ? 'none with 1 replication'
      : `${intervalName(level)}, ${count(replications, 'replication')}`;
  const days = count(Math.round(programme.observedDays), 'day');
  return [
    ...noteOf(scenario),
    'Work times and chances of defects come from the scenario and were not checked against records of the ' +
      'real plants; if they are wrong, so is the answer.',
    ...(said.length === 0
      ? []
      : [
          `The scenario states the source of ${count(said.length, 'value')}: ${counts(said)}. See ` +
            'Assumptions below.',
        ]),
    `Intervals show how far chance inside the model moves the means (${interval}). They do not cover ` +
      'errors in the inputs, nor the spread of single weeks or units.',
    'People, trucks and parts follow their rules and calendars without exception: nobody improvises, helps ' +
      'another crew or works longer to catch up, unless the scenario says so.',
    ...(costs === null
      ? []
      : [
          'The cost of a unit covers only what the scenario prices: no material of the unit itself, no ' +
            'tax, no interest beyond that. Prices were not checked against accounts.',
        ]),
    `Left out: ${costs === null ? 'cost, and ' : ''}everything else that the scenario does not name.`,
    programme.kind === 'programme'
      ? `Observed: ${days} from ${programme.start}, the ramp included.`
      : `Observed: ${days} of a steady run, warm-up left out.`,
  ];
}
