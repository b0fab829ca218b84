import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { atPace, howMany, inWords, Pace, timeLeft } from '../../../src/cli/front/pace.js';
import { progressOn } from '../../../src/cli/front/progress.js';
import type { Progress } from '../../../src/cli/front/said.js';
import { lines, SILENT } from '../../../src/cli/front/shown.js';

describe('the pace of replications', () => {
  const paceOf = (marks: readonly (readonly [done: number, at: number])[]): number | undefined => {
    const pace = new Pace();
    for (const [done, at] of marks) pace.mark(done, at);
    return pace.perSecond;
  };

  it('is that of the later half, as the first replications are slow', () => {
    // Two in the first 4 s, then two a second: 8 in the last 4 s.
    expect(
      paceOf([
        [0, 0],
        [1, 2],
        [2, 4],
        [4, 5],
        [6, 6],
        [8, 7],
        [10, 8],
      ]),
    ).toBe(2);
  });

  it('is not that of what a journal held', () => {
    // A thousand in a tenth of a second, then one a second.
    const journal = Array.from({ length: 1000 }, (_, i) => [i + 1, i / 10_000] as const),
      run = Array.from({ length: 20 }, (_, i) => [1001 + i, 1.1 + i] as const);
    expect(paceOf([...journal, ...run])).toBeCloseTo(1, 9);
  });

  it('forgets what was more than a minute ago', () => {
    // Ten a second for 100 s, then one a second for 100 s.
    const fast = Array.from({ length: 1000 }, (_, i) => [i, i / 10] as const),
      slow = Array.from({ length: 100 }, (_, i) => [1000 + i, 100 + i] as const);
    expect(paceOf([...fast, ...slow])).toBeCloseTo(1, 9);
  });

  it('is unknown below five replications, and over a pause the one before', () => {
    expect(
      paceOf([
        [1, 1],
        [2, 2],
        [5, 5],
      ]),
    ).toBeUndefined();
    const pace = new Pace();
    for (let i = 0; i <= 10; i++) pace.mark(i, i);
    pace.pause();
    pace.mark(11, 500);
    expect(pace.perSecond).toBe(1);
    for (let i = 1; i <= 10; i++) pace.mark(11 + i, 500 + i / 4);
    expect(pace.perSecond).toBe(4);
  });
});

describe('times in words', () => {
  it.each([
    [0, '5 s'],
    [12, '10 s'],
    [54, '55 s'],
    [56, '1 min'],
    [200, '3 min'],
    [3540, '59 min'],
    [3590, '1 h'],
    [7860, '2 h 10 min'],
  ])('%d seconds are %s', (seconds, words) => {
    expect(inWords(seconds)).toBe(words);
  });

  it('say how sure the end is', () => {
    expect(timeLeft({ least: 100, most: 100 }, 40, 0.5)).toBe('about 2 min');
    expect(timeLeft({ least: 1000, most: 4000 }, 100, 2)).toBe('8 to 33 min');
    expect(timeLeft({ least: 130, most: 4000 }, 100, 2)).toBe('15 s to 33 min');
    expect(timeLeft({ least: 4000, most: 40_000 }, 0, 2)).toBe('33 min to 5 h 35 min');
    expect(timeLeft({ least: 400, most: null }, 100, 2)).toBe('at least 3 min');
    expect([
      howMany({ least: 5, most: 5 }),
      howMany({ least: 5, most: 9 }),
      howMany({ least: 5, most: null }),
    ]).toEqual(['5', '5 to 9', 'at least 5']);
    expect([12.4, 0.25, 1 / 130].map(atPace)).toEqual(['12 a second', 'one in 4 s', 'one in 2 min']);
  });
});

describe('progress on a terminal', () => {
  it('tells how far a long reading is, and for how long it goes on', () => {
    let seconds = 0;
    const waits: string[] = [],
      progress = progressOn({ ...SILENT, wait: (text) => waits.push(text) }, () => seconds);
    progress.busy('reading floor.csv');
    for (const [at, soFar] of [
      [1, ': 10 %, 500,000 rows'],
      [3, ': 30 %, 1,500,000 rows'],
      [5, ': 50 %, 2,500,000 rows'],
    ] as const) {
      seconds = at;
      progress.busy('reading floor.csv', soFar);
      progress.tick();
    }
    // Another thing begins: its time counts from now on.
    progress.busy('reading floor.csv again');
    progress.tick();
    seconds = 8;
    progress.tick();
    expect(waits).toEqual([
      'reading floor.csv: 30 %, 1,500,000 rows, 3 s',
      'reading floor.csv: 50 %, 2,500,000 rows, 5 s',
      'reading floor.csv again, 3 s',
    ]);
  });
});

describe('progress where there is no terminal', () => {
  let said: string[] = [],
    seconds = 0;
  const now = (): number => seconds,
    begin = (quiet = false): Progress => progressOn(quiet ? SILENT : lines(now), now);
  /** Replications `from` to `to` of so many, one in `each` seconds. */
  const run = ({ replications }: Progress, from: number, to: number, of: number, each: number): void => {
    for (let done = from; done <= to; done++) {
      seconds += each;
      replications(done, of);
    }
  };
  beforeEach(() => {
    [said, seconds] = [[], 0];
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      said.push(String(text).trimEnd());
      return true;
    });
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('is a line a stage, and one every half minute with the count and the time left', () => {
    const progress = begin();
    progress.stage('running');
    run(progress, 1, 100, 100, 1);
    expect(said).toEqual([
      'running',
      '30 of 100 replications, about 1 min left',
      '60 of 100 replications, about 40 s left',
      '90 of 100 replications, about 10 s left',
    ]);
  });

  it('says nothing more where all is done in less than half a minute', () => {
    const progress = begin();
    progress.stage('running');
    run(progress, 1, 100, 100, 0.2);
    progress.forecast({ least: 110, most: 160 });
    run(progress, 101, 160, 160, 0.1);
    expect(said).toEqual(['running']);
  });

  it('says before a long one how long, by the pace up to then, and once', () => {
    const progress = begin();
    progress.stage('running');
    run(progress, 1, 20, 20, 0.5);
    progress.stage('preparing');
    seconds += 1000;
    progress.forecast({ least: 620, most: 2420 });
    expect(said.slice(2)).toEqual(['620 to 2420 replications in all, 2 a second: 5 to 20 min']);
    run(progress, 21, 80, 620, 0.5);
    progress.forecast({ least: 320, most: 320 });
    run(progress, 81, 140, 320, 0.5);
    expect(said.slice(3)).toEqual([
      '80 of 620 to 2420 replications, 5 to 20 min left',
      '140 of 320 replications, about 2 min left',
    ]);
  });

  it('of a search whose length nobody knows, says so', () => {
    const progress = begin();
    progress.stage('running');
    run(progress, 1, 10, 10, 1);
    progress.forecast({ least: 10, most: null });
    run(progress, 11, 50, 52, 1);
    progress.forecast({ least: 400, most: null });
    run(progress, 51, 90, 92, 1);
    expect(said.slice(1)).toEqual([
      '30 replications so far',
      'at least 400 replications in all, 1 a second: at least 6 min',
      '80 of at least 400 replications, at least 5 min left',
    ]);
  });

  it('is silent with --quiet', () => {
    const progress = begin(true);
    progress.stage('running');
    run(progress, 1, 100, 100, 10);
    progress.forecast({ least: 1e6, most: 1e6 });
    expect(said).toEqual([]);
  });

  it('of a replication that takes long tells how far it is, and how long all take, after two seconds', () => {
    let inside = 0;
    const progress = progressOn(lines(now), now, () => inside);
    progress.stage('running');
    progress.replications(0, 20);
    // A hundredth of a replication a second: one in 100 s.
    for (let second = 1; second <= 40; second++) {
      [seconds, inside] = [second, second / 100];
      progress.tick();
    }
    expect(said.slice(1)).toEqual([
      '20 replications in all, one in 2 min: about 33 min',
      '0.3 of 20 replications, about 33 min left',
    ]);
    expect(progress.secondsLeft()).toBeCloseTo(1960, 6);
    // The one under way has ended: its part is no longer under way.
    inside = 0;
    progress.replications(1, 20);
    expect(progress.secondsLeft()).toBeLessThan(1960);
  });
});
