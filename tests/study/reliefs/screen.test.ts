import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import { looksOf } from '../../../src/study/reliefs/runs.js';
import { ReliefScreen } from '../../../src/study/reliefs/screen.js';

/** Standard normal numbers (Box & Muller 1958). */
function normals(seed: string): () => number {
  const uniform = seedrandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const ZONE = 0.5,
  LOOKS = looksOf(40);

/** Gains of given means with noise of which half is common, played to the end; how many runs it took. */
function play(
  seed: string,
  means: readonly number[],
  spread = 1,
  level = 0.95,
): { outs: ReliefScreen['outs']; runs: number } {
  const normal = normals(seed),
    screen = new ReliefScreen({ count: means.length, looks: LOOKS.length, zone: ZONE, level });
  let runs = 0,
    done = 0;
  for (const end of LOOKS) {
    const rounds = Array.from({ length: end - done }, () => {
      const common = normal();
      return means.map((mean) => mean + spread * Math.SQRT1_2 * (common + normal()));
    });
    runs += rounds.length * screen.alive.length;
    if (end < 40) screen.look(screen.alive.map((i) => rounds.map((round) => round[i])));
    done = end;
  }
  return { outs: screen.outs, runs };
}

describe('the screen of values', () => {
  it('looks often, the first time after five', () => {
    expect(looksOf(40)).toEqual([5, 10, 15, 20, 30, 40]);
    expect([looksOf(5), looksOf(2), looksOf(15)]).toEqual([[5], [2], [5, 10, 15]]);
  });

  it.each([0.5, 1, 2])(
    'is wrong in at most 5 of 100 trials at a spread of %f: the greatest mover, less or more, stays',
    (spread) => {
      // Ahead of the next by a little only; one moves it by just less than the zone, one by a little more.
      const means = [0.9, -1, 0.95, -0.95, 0.55, -0.45, 0.2, 0],
        right = Array.from({ length: 500 }, (_, t) => play(`most ${spread} ${t}`, means, spread)).filter(
          ({ outs }) => outs[1] === null && outs[4] !== 'no effect',
        );
      // Three standard errors of 500 trials are 0.029.
      expect(right.length / 500).toBeGreaterThanOrEqual(0.95 - 0.029);
    },
  );

  it('is right as often where the one that moves it most is looked at with the weakest level', () => {
    // At half the level it may be wrong in half of all trials, and is wrong less often than that.
    const wrong = Array.from({ length: 400 }, (_, t) => play(`half ${t}`, [-0.8, 0.75], 1, 0.5)).filter(
      ({ outs }) => outs[0] !== null,
    );
    expect(wrong.length / 400).toBeLessThanOrEqual(0.5);
    expect(wrong.length).toBeGreaterThan(0);
  });

  it('spends fewer runs where most are far behind or without effect, and says which is which', () => {
    const { outs, runs } = play('clear', [4, -4, 0.9, -0.9, 0, 0], 0.05);
    expect(outs).toEqual([null, null, 'behind', 'behind', 'no effect', 'no effect']);
    // Two to the end, four only to the first look.
    expect(runs).toBe(2 * 40 + 4 * 5);
  });

  it('rules nobody out for being behind one that may move it by less than the zone', () => {
    expect(play('small', [0.45, 0.3], 0.002).outs).toEqual(['no effect', 'no effect']);
    expect(play('edge', [0.5, 0.5], 0.5).outs).toEqual([null, null]);
  });

  it('rules out at once what is the same as the base in every replication', () => {
    const screen = new ReliefScreen({ count: 2, looks: 2, zone: 0.1, level: 0.95 });
    screen.look([
      [0, 0],
      [0, 3],
    ]);
    expect([screen.outs, screen.alive]).toEqual([['no effect', null], [1]]);
  });

  it('refuses rows of others than those that are still in, and a zone of nothing', () => {
    const options = { count: 2, looks: 1, zone: 1, level: 0.95 };
    expect(() => {
      new ReliefScreen(options).look([[1]]);
    }).toThrow('screen: expected 2 rows, one of each that is still in, got 1');
    expect(() => new ReliefScreen({ ...options, zone: 0 })).toThrow(
      'screen: expected an indifference zone above 0, got 0',
    );
  });
});
