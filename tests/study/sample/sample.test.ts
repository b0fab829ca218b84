import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { Deferred, type Pending, resolved } from '../../../src/study/sample/deferred.js';
import { planned } from '../../../src/study/sample/planned.js';
import { Sample } from '../../../src/study/sample/sample.js';
import { amount } from '../../../src/study/statistics/skewed-interval.js';
import { observation, twoPlants } from '../made-observation.js';

const sampleOf = (): Sample => new Sample(planned(twoPlants, compile(twoPlants)), 0.95);

describe('a sample', () => {
  it('tells at any time of the replications that have come', () => {
    const sample = sampleOf(),
      wip = sample.amount((each) => each.wip),
      busy = sample.share(({ wip: value }) => value / 10),
      high = sample.count((each) => each.wip > 4),
      last = sample.fold(0, (_, each) => each.replication);
    [4, 6, NaN].forEach((value, i) => {
      sample.take(observation(twoPlants, i + 1, { wip: value }));
    });
    expect(wip.value).toEqual(amount([4, 6], 0.95));
    expect(busy.value).toMatchObject({ mean: 0.5, n: 2, high: 1 });
    expect([high.value, last.value, sample.replications, sample.first.replication]).toEqual([1, 3, 3, 1]);
    sample.take(observation(twoPlants, 4, { wip: 8 }));
    expect(wip.value).toEqual(amount([4, 6, 8], 0.95));
    expect(high.value).toBe(2);
  });

  it('cannot be asked of replications that have gone by', () => {
    const sample = sampleOf();
    expect(() => sample.first).toThrow('replications: expected at least 1 to summarise, got none; run some');
    sample.take(observation(twoPlants, 1));
    expect(() => sample.amount((each) => each.wip)).toThrow('asked before its first replication comes');
  });
});

describe('what is known later', () => {
  it('is told with all its parts, as plain data', () => {
    let rate = 3;
    const kept = new Date(0),
      pending: Pending<{ rate: number; rows: { name: string; at: Date | null }[] }> = {
        rate: new Deferred(() => rate),
        rows: new Deferred<{ name: string; at: Date | null }[]>(() => [
          { name: 'a', at: kept },
          { name: new Deferred(() => `b ${rate}`), at: null },
        ]),
      };
    rate = 4;
    expect(resolved(pending)).toEqual({
      rate: 4,
      rows: [
        { name: 'a', at: kept },
        { name: 'b 4', at: null },
      ],
    });
  });
});
