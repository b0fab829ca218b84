import { describe, expect, it } from 'vitest';
import { BUILDS } from '../study/constraint/builds.js';
import { SLOW } from './agree.js';
import { replicateBuilt } from './built.js';

const SEEDS = ['1', '2', '3'],
  REPLICATIONS = 4,
  WEEK = 7 * 24 * 60;
/** Units are counted in eight weeks, after the start has died away. */
const FROM = 3 * WEEK,
  TO = 11 * WEEK;

/** Units shipped in these weeks, mean over a few replications; a gridlock is an error. */
function shipped(yaml: string, seed: string): number {
  const counts = replicateBuilt(yaml, REPLICATIONS, seed, ({ shippedAt, outcome }) => {
    expect(outcome).not.toBe('gridlock');
    return shippedAt.filter((at) => at >= FROM && at < TO).length;
  });
  return counts.reduce((sum, each) => sum + each, 0) / REPLICATIONS;
}

describe.each(
  BUILDS.map((build) => [`${build.bound} (${/scenario: (.*)/.exec(build.yaml)?.[1]})`, build] as const),
)('a build bound by %s', SLOW, (_, { bound, yaml, helps, lesser, decoys }) => {
  const base = new Map(SEEDS.map((seed) => [seed, shipped(yaml, seed)]));
  /** What one more brings under the same chance, as a share, by seed. */
  const gains = (changed: string): number[] =>
    SEEDS.map((seed) => shipped(changed, seed) / (base.get(seed) ?? NaN) - 1);

  it('falls short by a fifth at least of what is asked, unless nothing binds it', () => {
    const asked = 8 * 5 * Number(/per day: (\d+)/.exec(yaml)?.[1]);
    for (const units of base.values())
      if (bound === 'nothing') expect(Math.abs(units / asked - 1)).toBeLessThan(0.01);
      else expect(units).toBeLessThan(0.8 * asked);
  });

  it.each(decoys.map((each) => [`${each.what}, ${each.of.kind} ${each.of.name}`, each.yaml]))(
    'ships no more with %s',
    (_, changed) => {
      // Most are exactly the same. Others move a unit across the ends of the eight weeks; in the balanced line
      // relief of the station that was slowest by chance is worth half a per cent.
      for (const gain of gains(changed)) expect(Math.abs(gain)).toBeLessThan(0.01);
    },
  );

  it.each(helps.map((each) => [`${each.what}, ${each.of.kind} ${each.of.name}`, each.yaml]))(
    'ships clearly more with %s, and more than with anything else',
    (_, changed) => {
      const found = gains(changed);
      for (const gain of found) expect(gain).toBeGreaterThan(0.09);
      if (helps[0]?.yaml !== changed) return;
      for (const other of lesser)
        for (const [s, gain] of gains(other.yaml).entries()) {
          expect(gain).toBeGreaterThan(0.01);
          expect(gain).toBeLessThan(0.8 * (found[s] ?? NaN));
        }
    },
  );
});

describe('the builds', () => {
  it('are bound by each kind of thing, and each has at least five decoys', () => {
    expect([...new Set(BUILDS.map(({ bound }) => bound))].sort()).toEqual([
      'carrier',
      'crew',
      'feeder',
      'hours',
      'lane',
      'lot',
      'nothing',
      'rework',
      'room',
      'supply',
      'team',
      'timetable',
    ]);
    for (const { decoys, helps, bound } of BUILDS) {
      expect(decoys.length).toBeGreaterThanOrEqual(5);
      expect(helps.length > 0).toBe(bound !== 'nothing');
    }
  });
});
