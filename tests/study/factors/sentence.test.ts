import { describe, expect, it } from 'vitest';
import { judged } from '../../../src/study/compare/verdict.js';
import type { EffectResult, FactorsResults } from '../../../src/study/factors/results.js';
import { factorsSentence } from '../../../src/study/factors/sentence.js';
import { studyOf } from './made.js';

const THREE = `
factors:
  build: { change: route.build.work, levels: [2 h, 1 h] }
  trim: { change: route.trim.work, levels: [1 h, 2 h] }
  room: { change: sites.hall.stations.trim bench.buffer, levels: [0, 3] }
`;
const found = await studyOf(THREE);
type Interval = readonly [low: number, high: number];

/** The results with other intervals of the throughput, by words; a zone of 0.1. */
function withEffects(of: Readonly<Record<string, Interval>>, more: Partial<FactorsResults> = {}): string {
  const results = { ...found, ...more };
  const measures = results.measures.map((measure) => ({ ...measure, zone: { share: 0.01, amount: 0.1 } }));
  const effects = results.effects.map((effect): EffectResult => {
    const [low, high] = of[effect.word] ?? [-0.02, 0.02];
    return {
      ...effect,
      measures: effect.measures.map((each, m) => {
        if (m > 0) return each;
        const difference = { ...each.difference, mean: (low + high) / 2, low, high };
        return { ...each, difference, ...judged(difference, measures[0]) };
      }),
    };
  });
  return factorsSentence({ ...results, measures, effects });
}

describe('the answer of an experiment', () => {
  it('names what matters most only where its interval lies beyond those of all others, also of losses', () => {
    expect(withEffects({ A: [0.3, 0.5], B: [0.1, 0.2] })).toMatch(
      /What matters most by itself: build from 2 h to 1 h, \+0\.40 \(0\.30 to 0\.50\) units a working day, on average over the levels of the others\. Also seen: trim from 1 h to 2 h, \+0\.15/,
    );
    expect(withEffects({ A: [0.3, 0.5], B: [0.2, 0.31] })).toMatch(
      /The largest effect by itself: build .*; whether another is larger is not settled\./,
    );
    expect(withEffects({ A: [0.3, 0.5], B: [-0.45, -0.2] })).toContain(
      'whether another is larger is not settled',
    );
    expect(withEffects({ A: [0.1, 0.2], B: [-0.6, -0.4] })).toMatch(/What matters most by itself: trim from/);
    // One that is not seen may be larger all the same.
    expect(withEffects({ A: [0.3, 0.5], B: [-0.1, 0.9] })).toContain(
      'whether another is larger is not settled',
    );
    expect(withEffects({})).toContain(
      'No factor surely changes what is shipped on average over the levels of the others.',
    );
  });

  it('says that one does not matter only if it does not with any other either', () => {
    expect(withEffects({ A: [0.3, 0.5] })).toContain(
      'No difference that matters, by itself or with another: trim, room.',
    );
    const withAnother = withEffects({ A: [0.3, 0.5], AB: [0.2, 0.4] });
    expect(withAnother).toContain('No difference that matters, by itself or with another: room.');
    expect(withAnother).toContain(
      'No difference that matters on average over the levels of the others: trim.',
    );
    expect(withEffects({ A: [0.3, 0.5], BC: [-0.3, 0.3] })).not.toContain('by itself or with another: trim');
    expect(withEffects({ A: [0.3, 0.5], C: [-0.3, 0.3] })).toContain('Not settled by itself: room.');
    // At the edge of the zone and beyond it.
    expect(withEffects({ A: [0.3, 0.5], B: [-0.1, 0.1] })).toContain('by itself or with another: trim, room');
    expect(withEffects({ A: [0.3, 0.5], B: [-0.1, 0.11] })).toContain('Not settled by itself: trim.');
  });

  it('says more, less or neither of two together by the whole interval', () => {
    expect(withEffects({ AB: [0.2, 0.4] })).toContain(
      'Together more than the sum of both: build with trim +0.30 (0.20 to 0.40).',
    );
    expect(withEffects({ AC: [-0.4, -0.2] })).toContain(
      'Together less than the sum of both: build with room -0.3',
    );
    expect(withEffects({ AC: [-0.4, 0.2] })).toContain(
      'Not settled whether together more or less than the sum: build with room',
    );
    expect(withEffects({})).toContain('No two do more or less together than their sum by what matters.');
  });

  it('names the best combination, those that may ship as much, and of them the one with the fewest changes', () => {
    const best = (notBehind: number[], nearest: number | null) =>
      withEffects({}, { best: { combination: 5, notBehind, nearest } });
    expect(best([], null)).toMatch(
      /Most is shipped with build 1 h, trim 1 h, room 3: [\d.]+ units a working day \(.*?\), surely more than each other combination\. As it is it ships /,
    );
    expect(best([1], 1)).toContain(
      'not surely more than build 1 h, trim 1 h, room 0 (with the fewest changes: build 1 h, trim 1 h, room 0). ',
    );
    expect(best([0, 1, 2, 3], null)).toContain('not surely more than 4 other combinations.');
    expect(withEffects({}, { best: { combination: 0, notBehind: [], nearest: null } })).toContain(
      'That is the scenario as it is.',
    );
  });

  it('says of a part of the combinations what it cannot tell, and claims no more', async () => {
    const half = await studyOf(`design: half${THREE}`),
      answer = withEffects({ A: [0.3, 0.5] }, half);
    expect(answer).toMatch(
      /^Four of 8 combinations of three factors were run: the effect of each factor has in it what two others do together\./,
    );
    expect(answer).not.toContain('by itself or with another');
    expect(answer).toContain('No difference that matters with what two others add to it: trim, room.');
    expect(answer).not.toContain('on average over');
    expect(answer).not.toMatch(/together than their sum|Together/);
  });

  it('names both twos where they come as one', async () => {
    const four = await studyOf(
      `design: half${THREE}  more: { levels: { none: [], one: [{ costs.unit.day: 250 }] } }\n`,
    );
    expect(withEffects({ AB: [0.2, 0.4] }, four)).toContain(
      'Together more than the sum of both: build with trim or room with more +0.3',
    );
    expect(withEffects({ A: [0.3, 0.5] }, four)).not.toContain('by itself or with another');
  });
});
