import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import { Bifurcation } from '../../../src/study/reliefs/groups/bifurcation.js';
import { harmOf } from '../../../src/study/reliefs/groups/harm.js';

/** Standard normal numbers (Box & Muller 1958). */
function normals(seed: string): () => number {
  const uniform = seedrandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const ZONE = 0.5,
  MOST = 40;

/** Groups of 16 changes of given gains, which add up; the noise of each is its own. Runs that it took. */
function play(seed: string, gains: readonly number[], keep: number, spread: number, level = 0.95) {
  const normal = normals(seed),
    noise = gains.map(() => Array.from({ length: MOST }, () => spread * normal())),
    groups: number[][] = [];
  for (let first = 0; first < gains.length; first += 16)
    groups.push([...gains.keys()].slice(first, first + 16));
  const screen = new Bifurcation(groups, { keep, zone: ZONE, level, most: MOST });
  let runs = 0;
  for (let next = screen.next(4); next.length > 0; next = screen.next(4))
    for (const { node, to } of next) {
      const from = node.gains.length;
      runs += to - from;
      screen.take(
        node,
        Array.from({ length: to - from }, (_, r) =>
          node.members.reduce((sum, i) => sum + gains[i] + noise[i][from + r], 0),
        ),
      );
    }
  const kept = screen.nodes
    .filter(({ end, members }) => end === 'to the end' && members.length === 1)
    .map(({ members: [i] }) => i);
  return { screen, runs, kept };
}

describe('sequential bifurcation', () => {
  it('keeps all of the best in at least 95 of 100 trials, at a spread at which that is hard', () => {
    // The best two gain a little more than the zone and than all others, which gain a little less.
    const gains = Array.from({ length: 24 }, (_, i) => (i === 5 || i === 17 ? 0.6 : i % 8 === 3 ? 0.45 : 0)),
      right = Array.from({ length: 400 }, (_, t) => play(`best ${t}`, gains, 2, 1)).filter(
        ({ kept }) => kept.includes(5) && kept.includes(17),
      );
    // Three standard errors of 400 trials are 0.033.
    expect(right.length / 400).toBeGreaterThanOrEqual(0.95 - 0.033);
  });

  it('gives up one that gains just the zone no more often than promised', () => {
    // One that gains just the zone: to give it up is wrong in 2.5 of 100 trials at most.
    const wrong = Array.from({ length: 400 }, (_, t) =>
      play(`edge ${t}`, [ZONE, ...Array.from({ length: 15 }, () => 0)], 1, 0.3),
    ).filter(({ kept }) => !kept.includes(0)).length;
    expect(wrong / 400).toBeLessThanOrEqual(0.025 + 3 * Math.sqrt((0.025 * 0.975) / 400));
  });

  it('finds two of 64 with a fraction of the runs that one by one would take', () => {
    const gains = Array.from({ length: 64 }, (_, i) => (i === 20 ? 4 : i === 21 ? 3 : 0)),
      { kept, runs, screen } = play('few', gains, 2, 0.02);
    expect(kept.sort((a, b) => a - b)).toEqual([20, 21]);
    // The other three groups of 16 at the first look; then halves of the one, and the two to the end.
    expect(runs).toBe(4 * 5 + 2 * 5 + 2 * 5 + 2 * 5 + 2 * 40);
    expect(screen.bar).toBeGreaterThan(2.9);
    // Every change is in exactly one place at the end.
    const ends = screen.nodes.filter(({ end }) => end !== 'split').flatMap(({ members }) => members);
    expect(ends.sort((a, b) => a - b)).toEqual([...gains.keys()]);
  });

  it('hides a good one in a group with one that takes as much away, and says so where it was split', () => {
    const gains = [3, -3, 0, 0, ...Array.from({ length: 12 }, () => 0)];
    // What the assumption is about.
    expect(play('hidden', gains, 1, 0.02).kept).toEqual([]);
    const { screen } = play(
      'seen',
      [6, 0, 0, 0, 0, 0, 0, 0, -3, ...Array.from({ length: 7 }, () => 0)],
      1,
      0.02,
    );
    const { tested, found } = harmOf(screen.nodes, 0.95, ({ members }) => members);
    expect(tested).toBeGreaterThan(2);
    expect(found).toEqual([[8, 9, 10, 11, 12, 13, 14, 15]]);
  });

  it('refuses a zone of nothing, and what is none of its groups', () => {
    const options = { keep: 1, zone: 1, level: 0.95, most: 10 };
    expect(() => new Bifurcation([[0]], { ...options, zone: 0 })).toThrow(
      'screen: expected an indifference zone above 0, got 0',
    );
    expect(() => {
      new Bifurcation([[0]], options).take({ members: [0], gains: [], whole: null, end: null }, [1]);
    }).toThrow('screen: expected one of its groups, got another');
  });
});
