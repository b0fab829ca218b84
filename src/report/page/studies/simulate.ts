import {
  capital,
  count,
  exact,
  intervalName,
  number,
  percentWithInterval,
  withInterval,
} from '../../../study/format.js';
import type { DateQuantile } from '../../../study/programme/dates.js';
import type { Results } from '../../../study/simulate/results.js';
import { eachShift, toldConstraint } from '../../constraint.js';
import { simulateFirst } from '../../first/simulate.js';
import { counts } from '../../tables/assumptions.js';
import { NO_PRICES } from '../../tables/costs.js';
import { constraintFindings, lossesTold } from '../constraint.js';
import { type Fact, noteOf, origin, type PageContent } from '../page.js';
import { inputsNote, SAME_BASE, valuesTold } from '../rests.js';
import { pageTables } from '../tables.js';

/** The page of a simulate study. */
export function simulatePage(results: Results): PageContent {
  const { scenario, answer, programme } = results,
    told = toldConstraint(results);
  const found = [...constraintFindings(told), ...findings(results)];
  return {
    scenario: scenario.name,
    first: simulateFirst(results),
    losses: lossesTold(told, null, answer.heldPerDay),
    inFull: told === null ? answer.sentence : eachShift(answer.sentence, told),
    findings: found.length === 0 ? ['Nothing that stops the build was found.'] : found,
    costsAndDates: [
      ...dates(results),
      ...results.recoveries.map(({ sentence: said }) => said),
      costText(results),
    ],
    values: valuesTold(results.assumptions),
    assumptions: assumptions(results),
    facts: [...origin(results, runFacts(results)), ['Time zone', programme.zone]],
    tables: pageTables(results),
    more: 'All of these numbers, and more, are in results.json, and many in the CSV files beside this page.',
  };
}

function runFacts({ replications, warmUp, programme, answer: { window } }: Results): Fact[] {
  return [
    ['Replications', `${exact(replications)} builds of the whole programme`],
    [
      'Warm-up',
      warmUp !== null && warmUp.cutHours !== null
        ? `the first ${number(warmUp.cutHours)} h of each build are left out`
        : programme.kind === 'programme'
          ? 'none: the programme begins with an empty floor, and its ramp counts'
          : 'none',
    ],
    ...(window === null ? [] : [['Weeks judged', `${window.from} to ${window.to}`] as const]),
  ];
}

/** In so small a share of builds a finding comes last, as rare. */
const RARE = 0.05;

/** Besides the shortfall, which is the answer; what was seen in few builds comes last. */
function findings({ findings: all, replications }: Results): string[] {
  const isRare = (of: number): boolean => of < RARE * replications;
  return all
    .filter(({ kind }) => kind !== 'rate not held')
    .toSorted((a, b) => Number(isRare(a.replications)) - Number(isRare(b.replications)))
    .map(({ text, replications: of }) => {
      const told = isRare(of) ? `Rarely: ${text}` : capital(text);
      return `${told} (in ${exact(of)} of ${count(replications, 'build')})`;
    });
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
  const name = `Last unit out in ${number(p * 100)} % of the builds`,
    reason = why === null ? '' : why;
  if (date === null) return `${name}: not known${reason === '' ? '' : `; ${reason}`}.`;
  if (low === null || high === null)
    return `${name} by ${date}; no interval${reason === '' ? '' : `, ${reason}`}.`;
  return `${name} by ${date} (${intervalName(level)} ${low} to ${high}).`;
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
  const days = count(Math.round(programme.observedDays), 'day');
  return [
    ...noteOf(scenario),
    ...(said.length === 0
      ? ['The scenario does not say where any of its values comes from.']
      : [`The scenario states the source of ${count(said.length, 'value')}: ${counts(said)}.`]),
    inputsNote(level, replications),
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
    SAME_BASE,
  ];
}
