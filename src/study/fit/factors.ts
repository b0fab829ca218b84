import { mean } from '../statistics/sums.js';
import { optionEffects } from './warnings/options.js';

/** An option as what it does to the times of a step. */
export interface WorkFactor {
  readonly option: string;
  /** The value that counts as 1. */
  readonly usual: string;
  /** Of each other value: its mean over that of the usual one. */
  readonly factors: Readonly<Record<string, number>>;
}

/** Times with what options do to them taken out. */
export interface TakenOut {
  /** In the order in which they were found, the one that matters most first. */
  readonly factors: readonly WorkFactor[];
  /** As a unit with the usual values would take; of rows whose values are known. */
  readonly times: readonly number[];
  /** Of each of them its place in the list of all. */
  readonly rows: readonly number[];
  /** Options that matter by themselves, but have no factor, and why. */
  readonly left: readonly { readonly option: string; readonly why: 'explained' | 'aliased' }[];
}

type By = Readonly<Record<string, readonly string[]>>;

/** A value that was seen less often has no factor, and its times are left out. */
const FEWEST = 3;
const FELT_BELOW = 0.05;

/**
 * Factors of the options that matter, which are multiplied as `work factor` of a scenario is. The first is
 * the one with the smallest p; each further one has to matter when the others are taken out, so that an
 * option that merely goes along with another has none, and one that another hides has one (forward
 * selection). All are fitted together, such that the mean of the times of every value of every option is that
 * of the model: for times t of units with the values v, sum t = sum m f1(v1) f2(v2) .. over the units of each
 * value (the likelihood equations of a Poisson model with main effects on the logarithm; solved value by
 * value, as W. E. Deming & F. F. Stephan, Annals of Mathematical Statistics 11, 1940, 427-444; from memory).
 * @param options those that may have a factor
 */
export function takenOut(times: readonly number[], by: By, options: readonly string[]): TakenOut {
  let best: TakenOut = { factors: [], times, rows: times.map((_, i) => i), left: [] };
  const chosen: string[] = [],
    aliased: string[] = [];
  for (let rest = [...options]; rest.length > 0; ) {
    const rows = best.rows,
      effects = optionEffects(
        best.times,
        Object.fromEntries(rest.map((option) => [option, rows.map((row) => by[option][row])])),
      )
        .filter(({ adjusted }) => adjusted < FELT_BELOW)
        .sort((a, b) => a.adjusted - b.adjusted || a.p - b.p),
      [next] = effects;
    if (effects.length === 0) break;
    rest = rest.filter((option) => option !== next.option);
    const more = factorsOf(times, by, [...chosen, next.option]);
    if (more === undefined) aliased.push(next.option);
    else {
      chosen.push(next.option);
      best = { ...more, left: [] };
    }
  }
  return {
    ...best,
    left: optionEffects(times, by)
      .filter(({ option, isFelt }) => isFelt && options.includes(option) && !chosen.includes(option))
      .map(({ option }) => ({ option, why: aliased.includes(option) ? 'aliased' : 'explained' })),
  };
}

/** Undefined where the table does not tell the options apart. */
function factorsOf(
  times: readonly number[],
  by: By,
  options: readonly string[],
): Omit<TakenOut, 'left'> | undefined {
  const often = options.map((option) => valuesSeen(by[option])),
    rows = times.flatMap((_, i) =>
      options.every((option, o) => often[o].includes(by[option][i])) ? [i] : [],
    ),
    codes = options.map((option, o) => rows.map((i) => often[o].indexOf(by[option][i])));
  if (!areTold(codes, often)) return undefined;
  const effects = often.map((values) => values.map(() => 1)),
    seen = rows.map((i) => times[i]);
  let base = mean(seen);
  const model = (k: number): number => codes.reduce((m, code, o) => m * effects[o][code[k]], base);
  for (let round = 0, off = Infinity; round < MOST_ROUNDS && off > CLOSE; round++) {
    off = 0;
    for (const [o, code] of codes.entries()) {
      const sums = often[o].map(() => ({ seen: 0, model: 0 }));
      seen.forEach((time, k) => {
        sums[code[k]].seen += time;
        sums[code[k]].model += model(k);
      });
      sums.forEach((sum, value) => {
        const by = sum.seen / sum.model;
        effects[o][value] *= by;
        off = Math.max(off, Math.abs(by - 1));
      });
      base *= effects[o][0];
      const usual = effects[o][0];
      effects[o] = effects[o].map((each) => each / usual);
    }
  }
  return {
    factors: options.map((option, o) => ({
      option,
      usual: often[o][0],
      factors: Object.fromEntries(often[o].slice(1).map((value, v) => [value, effects[o][v + 1]])),
    })),
    times: seen.map((time, k) => (time * base) / model(k)),
    rows,
  };
}
const MOST_ROUNDS = 500,
  CLOSE = 1e-12;

/** Values seen often enough to tell something, the commonest first; of equally common ones by name. */
export function valuesSeen(column: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const value of column) if (value !== '') counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts]
    .filter(([, n]) => n >= FEWEST)
    .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
    .map(([value]) => value);
}

/** Whether the rows tell all effects apart: their design has full rank. */
function areTold(codes: readonly (readonly number[])[], often: readonly (readonly string[])[]): boolean {
  const wanted = often.reduce((sum, values) => sum + values.length - 1, 1),
    designs = new Map<string, number[]>();
  (codes[0] ?? []).forEach((_, k) => {
    const row = [1, ...often.flatMap((values, o) => values.slice(1).map((_, v) => +(codes[o][k] === v + 1)))];
    designs.set(row.join(), row);
  });
  return rankOf([...designs.values()]) === wanted;
}

/** Rank of rows of whole numbers, by elimination. */
function rankOf(rows: number[][]): number {
  let rank = 0;
  for (let column = 0; column < (rows[0]?.length ?? 0); column++) {
    const at = rows.findIndex((row, r) => r >= rank && Math.abs(row[column]) > 1e-9);
    if (at < 0) continue;
    [rows[rank], rows[at]] = [rows[at], rows[rank]];
    const pivot = rows[rank];
    for (let r = rank + 1; r < rows.length; r++) {
      const times = rows[r][column] / pivot[column];
      rows[r] = rows[r].map((each, c) => each - times * pivot[c]);
    }
    rank++;
  }
  return rank;
}
