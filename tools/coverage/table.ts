import type { Held } from './coverage.js';

/** Fewer intervals say nothing of how often they hold. */
const LEAST_TOLD = 100;

/**
 * A line a name, those that held least first; per cent. `plain`: what Student's interval holds of the same
 * replications.
 */
export function coverageTable(all: readonly Held[], plain?: readonly Held[]): string {
  const before = new Map(plain?.map((held) => [held.name, held])),
    rows = [...all]
      .sort((a, b) => order(a) - order(b) || b.paths - a.paths)
      .map((held) => [
        held.name,
        String(held.paths),
        held.told === 0
          ? '-'
          : `${percent(held.share)} ± ${percent(held.error)}${held.told < LEAST_TOLD ? ' ?' : ''}`,
        percent(held.width),
        percent(held.few / total(held)),
        percent((held.same + held.bounded) / total(held)),
        ...(plain === undefined ? [] : [percent(before.get(held.name)?.share ?? NaN)]),
      ]);
  return aligned([
    [
      'measure',
      'estimates',
      'held',
      'half-width',
      'too few',
      'all the same',
      ...(plain === undefined ? [] : ['Student']),
    ],
    ...rows,
  ]);
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

function aligned(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
