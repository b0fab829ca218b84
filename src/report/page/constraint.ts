import type { ConstraintResult } from '../../study/constraint/results.js';
import { calledThing } from '../../study/constraint/sentence.js';
import { capital, count, exact, intervalName, number } from '../../study/format.js';
import { type StationResult, shareIn } from '../../study/sections/stations.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { columns, type PageTable } from '../columns.js';
import {
  allowedText,
  eachShift,
  rungsOf,
  stoppedText,
  trialVerdict,
  triedIn,
  waitingFor,
} from '../constraint.js';
import { figure, range } from '../first/figures.js';
import { difference, estimated, rounded } from '../sheets/cells.js';

/**
 * What stops the build, in sentences; empty where that was not looked at.
 * @param at the rate, where there are several: `at 3.5 a day`
 */
export const constraintFindings = (found: ConstraintResult | null, at: string | null = null): string[] =>
  found === null ? [] : [eachShift(stoppedText(found, at), found)];

/**
 * Where the capacity of what limits it goes, in sentences, with why it is not at work all the time.
 * @param shipped over all replications, where what was lost was looked at in fewer
 */
export function lossesTold(
  found: ConstraintResult | null,
  at: string | null = null,
  shipped: Estimate | null = null,
): string[] {
  const ladder = found?.ladder ?? null;
  if (found === null || ladder === null) return [];
  const [most] = [...ladder.losses].sort((a, b) => b.perDay.mean - a.perDay.mean),
    thing = ladder.of.kind === 'carrier' ? `the ${ladder.of.name}` : calledThing(ladder.of);
  return [
    `${at === null ? 'By' : `${capital(at)}, by`} averages alone, ${thing} would allow ` +
      `${number(ladder.allowedPerDay)} units a day; ${figure(ladder.shippedPerDay)} are shipped ` +
      `(${range(ladder.shippedPerDay)})` +
      (shipped === null || shipped.n === ladder.shippedPerDay.n
        ? '.'
        : `: over the ${count(ladder.shippedPerDay.n, 'build')} in which losses were looked at. Over all ` +
          `${exact(shipped.n)} it is ${figure(shipped)}.`),
    ...(most === undefined || most.perDay.mean <= 0
      ? []
      : [`The most is lost by this: ${most.cause}, ${figure(most.perDay)} a day (${range(most.perDay)}).`]),
    ...atWork(found),
  ];
}

const AT_WORK = ['working', 'unattended', 'changeover'] as const,
  NOT_AT_WORK = [
    'short of crew',
    'short of parts',
    'short of carrier',
    'short of equipment',
    'blocked',
    'starved',
    'down',
  ] as const;
const SAID: Readonly<Record<(typeof NOT_AT_WORK)[number], string>> = {
  'short of crew': 'waits for people',
  'short of parts': 'waits for parts',
  'short of carrier': 'waits for a carrier',
  'short of equipment': 'waits for equipment',
  blocked: 'has no room ahead',
  starved: 'has no unit',
  down: 'is down',
};
/** Of its time on shift; less is not told. */
const LEAST_SHARE = 0.01;

/** Why what limits it is not at work all of its time on shift. */
function atWork({ judged, ladder }: ConstraintResult): string[] {
  const of = ladder?.of,
    station =
      of?.kind === 'station'
        ? judged?.stations.find(({ name, site }) => name === of.name && site === of.site)
        : undefined;
  if (station === undefined) return [];
  const { name, shareOnShift: share } = station,
    idle = idleText(share),
    active = AT_WORK.reduce((sum, state) => sum + share[state].mean, 0);
  return [
    `In the weeks judged ${name} is at work ${inPercent(active)} % of its time on shift, changeovers ` +
      `included${idle === '' ? '' : `; ${idle}`}.`,
  ];
}

/** What a station does when it is not at work, `else it waits for people 13 %`; empty: it always is. */
export function idleText(share: StationResult['shareOnShift']): string {
  const idle = NOT_AT_WORK.map((state) => ({ said: SAID[state], share: shareIn(share, state) }))
    .filter((each) => each.share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share);
  return idle.length === 0
    ? ''
    : `else it ${idle.map((each) => `${each.said} ${inPercent(each.share)} %`).join(', ')}`;
}

const inPercent = (share: number): string => exact(Math.round(100 * share));

const behind = (at: string | null): string => (at === null ? '' : ` ${at}`);

/** What was tried, the losses by cause, and what units wait for. */
export const constraintTables = (found: ConstraintResult | null, at: string | null = null): PageTable[] =>
  found === null ? [] : [trials(found, at), losses(found, at), waiting(found, at)];

function trials(found: ConstraintResult, at: string | null): PageTable {
  const [first] = found.tried;
  return {
    id: 'trials',
    title: `What stops it${behind(at)}: one more of each`,
    note:
      'One more of each of the likeliest, and an hour more, in ' +
      `${triedIn(found, 'replication')} with the same chance; units shipped a working day more` +
      (first?.gain.low == null
        ? ''
        : `, in brackets ${intervalName(first.gain.level)}, all to hold together`) +
      `. A gain below ${number(found.zone)} does not matter. Waiting: units that wait for it in the end, ` +
      'on average, the index by which trials are chosen.',
    ...columns(found.tried, [
      ['Tried', (tried) => eachShift(tried.what, found)],
      ['A day more', 'gain'],
      ['Verdict', (tried) => trialVerdict(tried, found)],
      [
        'Waiting, units',
        (tried) => {
          const units = waitingFor(tried, found);
          return units === null ? '' : rounded(units);
        },
      ],
    ]),
  };
}

function losses({ ladder, replications }: ConstraintResult, at: string | null): PageTable {
  return {
    id: 'losses',
    title: `From what arithmetic allows to what is shipped${behind(at)}`,
    note:
      `Units a working day, over ${count(replications, 'replication')}` +
      (ladder === null || ladder.shippedPerDay.low === null
        ? ''
        : `; in brackets: ${intervalName(ladder.shippedPerDay.level)}`) +
      '. The causes add up to the difference exactly; above 0: gained.',
    head: ['Cause', 'A day'],
    rows:
      ladder === null
        ? []
        : [
            [allowedText(ladder), rounded(ladder.allowedPerDay)],
            ...rungsOf(ladder).map(({ cause, change }) => [cause, difference(change)]),
            ['shipped', estimated(ladder.shippedPerDay)],
          ],
  };
}

function waiting(found: ConstraintResult, at: string | null): PageTable {
  return {
    id: 'waiting',
    title: `What units wait for${behind(at)}`,
    note:
      'Units that wait for it in the end, on average: who waits for whom, followed to its end. An index ' +
      'after Li, Chang & Ni (2009), a hint.',
    ...columns(found.waiting, [
      ['Thing', ({ thing }) => calledThing(thing)],
      ['Units', ({ units }) => rounded(units)],
    ]),
  };
}
