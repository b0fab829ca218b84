import { tableOf } from '../../src/report/terminal/table.js';
import type { Held } from './coverage.js';

/** Fewer intervals say nothing of how often they hold. */
const LEAST_TOLD = 100;
/** Characters of a line; names of measures are long. */
const WIDTH = 160;

/**
 * A line a name, those that held least first; per cent. `plain`: what Student's interval holds of the same
 * replications.
 */
export function coverageTable(all: readonly Held[], plain?: readonly Held[]): string {
  const before = new Map(plain?.map((held) => [held.name, held])),
    figure = (head: string, cell: (held: Held) => string) => ({ head, align: 'right' as const, cell });
  return tableOf(
    [...all].sort((a, b) => order(a) - order(b) || b.paths - a.paths),
    [
      { head: 'measure', cell: 'name' },
      figure('estimates', ({ paths }) => String(paths)),
      figure('held', ({ told, share, error }) =>
        told === 0 ? '-' : `${percent(share)} ± ${percent(error)}${told < LEAST_TOLD ? ' ?' : ''}`,
      ),
      figure('half-width', ({ width }) => percent(width)),
      figure('too few', (held) => percent(held.few / total(held))),
      figure('all the same', (held) => percent((held.same + held.bounded) / total(held))),
      ...(plain === undefined
        ? []
        : [figure('Student', ({ name }) => percent(before.get(name)?.share ?? NaN))]),
    ],
  )(WIDTH);
}

/** Of all estimates together. */
export function totals(all: readonly Held[]): string {
  const sum = (of: keyof Held): number => all.reduce((known, held) => known + Number(held[of]), 0),
    given = all.filter(({ told }) => told >= LEAST_TOLD),
    within = given.filter(({ share }) => share >= 0.93 && share <= 0.97);
  return (
    `${percent(sum('held') / sum('told'))} % of ${sum('told')} intervals hold the truth; ` +
    `${percent(within.length / given.length)} % of ${given.length} names with ${LEAST_TOLD} or more hold 93 to 97 %; ` +
    `${sum('few')} were too few to say; of ${sum('bounded')} upper bounds of events not seen ` +
    `${percent(sum('above') / sum('bounded'))} % are below the truth`
  );
}

const total = ({ told, few, same, bounded }: Held): number => told + few + same + bounded;
/** Too few to tell come last. */
const order = ({ told, share }: Held): number => (told < LEAST_TOLD ? 2 : 0) + (told === 0 ? 1 : share);
const percent = (share: number): string => (Number.isFinite(share) ? (100 * share).toFixed(1) : '-');
