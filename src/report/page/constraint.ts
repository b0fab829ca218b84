import type { ConstraintResult } from '../../study/constraint/results.js';
import { calledThing } from '../../study/constraint/sentence.js';
import { count, intervalName, number, withInterval } from '../../study/format.js';
import { columns, type PageTable } from '../columns.js';
import { allowedText, largestLoss, rungsOf, stoppedText, trialVerdict, waitingFor } from '../constraint.js';
import { difference, estimated, rounded } from '../sheets/cells.js';

/**
 * What stops the build and where its capacity goes, in sentences; empty where that was not looked at.
 * @param at the rate, where there are several: `at 3.5 a day`
 */
export function constraintFindings(found: ConstraintResult | null, at: string | null = null): string[] {
  if (found === null) return [];
  const { ladder } = found,
    sentence = stoppedText(found, at);
  if (ladder === null) return [sentence];
  const most = largestLoss(ladder);
  return [
    sentence,
    `Why not more${behind(at)}: ${allowedText(ladder)} ${number(ladder.allowedPerDay)} a day, and ` +
      `${withInterval(ladder.shippedPerDay)} are shipped.` +
      (most === null ? '' : ` The largest loss is ${most}.`),
  ];
}

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
      `One more of each of the likeliest, and an hour more, in ${count(found.replications, 'replication')} ` +
      'with the same chance; units shipped a working day more' +
      (first?.gain.low == null
        ? ''
        : `, in brackets ${intervalName(first.gain.level)}, all to hold together`) +
      `. A gain below ${number(found.zone)} does not matter. Waiting: units that wait for it in the end, ` +
      'on average, the index by which trials are chosen.',
    ...columns(found.tried, [
      ['Tried', 'what'],
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
