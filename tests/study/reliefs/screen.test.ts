import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import { ReliefScreen } from '../../../src/study/reliefs/screen.js';

/** Standard normal numbers (Box & Muller 1958). */
function normals(seed: string): () => number {
  const uniform = seedrandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const ZONE = 0.5,
  LOOKS = [10, 20, 30, 40];

/** Gains of given means with noise of which half is common, played to the end; how many runs it took. */
function play(
  seed: string,
  means: readonly number[],
  keep: number,
  spread = 1,
): { screen: ReliefScreen; runs: number } {
  const normal = normals(seed),
    screen = new ReliefScreen({
      count: means.length,
      first: 10,
      looks: LOOKS.length,
      keep,
      zone: ZONE,
      level: 0.95,
    });
  let runs = 0,
    done = 0;
  for (const end of LOOKS) {
    const rounds = Array.from({ length: end - done }, () => {
      const common = normal();
      return means.map((mean) => mean + spread * Math.SQRT1_2 * (common + normal()));
    });
    screen.look(
      screen.alive.map((i) => {
        runs += rounds.length;
        return rounds.map((round) => round[i]);
      }),
    );
    done = end;
  }
  return { screen, runs };
}

describe('the screen of reliefs', () => {
  it.each([1, 2])(
    'keeps all of the best %i in at least 95 of 100 trials where they are ahead by just the zone',
    (keep) => {
      const means = Array.from({ length: 8 }, (_, i) => (i < keep ? 2 * ZONE : ZONE));
      const right = Array.from(
        { length: 500 },
        (_, t) => play(`keep ${keep} ${t}`, means, keep).screen,
      ).filter(({ outs }) => outs.slice(0, keep).every((out) => out === null));
      // Three standard errors of 500 trials are 0.029.
      expect(right.length / 500).toBeGreaterThanOrEqual(0.95 - 0.029);
    },
  );

  it('spends fewer runs where most are far behind or without effect, and says which is which', () => {
    const { screen, runs } = play('clear', [4, 4, 0.9, 0.9, 0, 0], 2, 0.2);
    expect(screen.outs).toEqual([null, null, 'behind', 'behind', 'no effect', 'no effect']);
    // Two to the end, four only to the first look.
    expect(runs).toBe(2 * 40 + 4 * 10);
  });

  it('rules nobody out for being behind where none are to be kept', () => {
    expect(play('ends', [4, 1.5, 0], 0, 0.2).screen.outs).toEqual([null, null, 'no effect']);
  });

  it('rules out at once what is the same as the base in every replication', () => {
    const screen = new ReliefScreen({ count: 2, first: 2, looks: 2, keep: 1, zone: 0.1, level: 0.95 });
    screen.look([
      [0, 0],
      [0, 3],
    ]);
    expect([screen.outs, screen.alive]).toEqual([['no effect', null], [1]]);
  });

  it('refuses values that do not fit', () => {
    const options = { count: 2, first: 2, looks: 1, keep: 1, zone: 1, level: 0.95 };
    expect(() => {
      new ReliefScreen(options).look([[1]]);
    }).toThrow('screen: expected 2 rows, one of each that is still in, got 1');
    expect(() => new ReliefScreen({ ...options, first: 1 })).toThrow(
      'screen: expected at least 2 first rounds, got 1',
    );
    expect(() => new ReliefScreen({ ...options, zone: 0 })).toThrow(
      'screen: expected an indifference zone above 0, got 0',
    );
  });
});
