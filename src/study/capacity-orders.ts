import { UNLIMITED, type Model } from '../flow/model.js';
import type { Build } from './capacity-mix.js';

/**
 * Builds by what the orders of a programme say of some options: one for each combination of values given, weighted by its
 * share of the quantity. Whatever is left open keeps the shares of the options.
 * @param mixes chances of the values of each option, as drawn
 */
export function orderedBuilds(
  { programme: { orders, quantity }, options }: Model,
  mixes: readonly Float64Array[],
  used: ReadonlySet<number>,
): Build[] {
  if (orders.count === 0 || quantity >= UNLIMITED) return [{ weight: 1, values: mixes }];
  const counts = new Map<string, { units: number; values: Float64Array[] }>();
  for (let row = 0; row < orders.count; row++) {
    const given = options.map((_, option) =>
        used.has(option) ? orders.values[row * options.length + option] : -1,
      ),
      key = given.join(' ');
    const build = counts.get(key) ?? {
      units: 0,
      values: mixes.map((mix, option) =>
        given[option] < 0 ? mix : mix.map((_, value) => (value === given[option] ? 1 : 0)),
      ),
    };
    build.units++;
    counts.set(key, build);
  }
  const drawn = quantity - orders.count;
  return [
    ...[...counts.values()].map(({ units, values }) => ({ weight: units / quantity, values })),
    ...(drawn > 0 ? [{ weight: drawn / quantity, values: mixes }] : []),
  ];
}
