import type { ConstraintResult, LadderResult } from '../../study/constraint/results.js';
import { bounds, intervalName, mean, number, short, signed } from '../../study/format.js';
import type { BottleneckResult } from '../../study/sections/bottlenecks.js';
import { allowedText, rungsOf, triedIn } from '../constraint.js';
import { byUse } from '../tables/bottlenecks.js';
import { BETWEEN_ALL, betweenHead } from './first.js';
import type { Piece } from './lines.js';
import { table } from './table.js';

const TOP_USED = 3;

/**
 * What stops the build, behind the first lines that name it, a blank line ahead of each part: what was tried,
 * and the ladder of losses.
 * @param at the rate, where there are several: `at 3.5 a day`
 */
export const constraintLines = (found: ConstraintResult, at: string | null = null): Piece[] => [
  ...(at === null ? [] : ['', `${at}:`]),
  ...trials(found),
  ...(found.ladder === null ? [] : ladder(found.ladder)),
];

function trials(found: ConstraintResult): Piece[] {
  const { tried } = found,
    [first] = tried;
  return first === undefined
    ? []
    : [
        '',
        table(
          tried.map(({ what, gain }) => [what, mean(gain), bounds(gain)]),
          [
            { head: `tried under the same chance, ${triedIn(found, 'build')}` },
            { head: 'a day more', align: 'right' },
            { head: first.gain.low === null ? 'interval' : BETWEEN_ALL },
          ],
        ),
      ];
}

function ladder(found: LadderResult): Piece[] {
  const { allowedPerDay, shippedPerDay } = found;
  return [
    '',
    table(
      [
        [allowedText(found), number(allowedPerDay), ''],
        ...rungsOf(found).map(({ cause, change }) => [`  ${cause}`, signed(change), bounds(change)]),
        ['shipped', mean(shippedPerDay), bounds(shippedPerDay)],
      ],
      [
        { head: 'from averages to what is shipped' },
        { head: 'a day', align: 'right' },
        { head: intervalHead(shippedPerDay) },
      ],
    ),
  ];
}

/** What is used most, in the weeks judged with the whole run beside; without such weeks that alone. */
export function usedLines(
  judged: ConstraintResult['judged'],
  whole: readonly BottleneckResult[],
  { replications, level }: { readonly replications: number; readonly level: number },
): Piece[] {
  const used = byUse(judged?.bottlenecks ?? whole, whole).slice(0, TOP_USED);
  if (used.length === 0) return [];
  const interval = replications < 2 ? 'no interval' : intervalName(level).replace(' CI', '');
  return [
    '',
    table(
      used.map(({ name, kind, active, whole: other }) => [
        `${name} (${kind})`,
        short(active, 100),
        ...(judged === null ? [] : [other === null ? '' : short(other.active, 100)]),
      ]),
      [
        { head: `used most, % of its time (${interval})` },
        { head: judged === null ? 'whole run' : `judged ${judged.from} to ${judged.to}` },
        ...(judged === null ? [] : [{ head: 'whole run' }]),
      ],
    ),
  ];
}

const intervalHead = ({ low, level }: { readonly low: number | null; readonly level: number }): string =>
  low === null ? 'interval' : betweenHead(level);
