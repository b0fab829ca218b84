import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MomentaryBottleneck } from '../../../src/flow/accounts/momentary-bottleneck.js';

interface Active {
  readonly resource: number;
  readonly begin: number;
  readonly end: number;
}

/** Tells the periods in the order of time; at one time ends go first. */
function told(
  periods: readonly Active[],
  resources: number,
): { sole: number[]; shifting: number[]; most: number } {
  let now = 0,
    most = 0;
  const momentary = new MomentaryBottleneck(resources, 0, (_, begin) => now - begin);
  const events = periods
    .flatMap((period) => [
      { at: period.begin, kind: 1, period },
      { at: period.end, kind: 0, period },
    ])
    .sort((a, b) => a.at - b.at || a.kind - b.kind);
  for (const { at, kind, period } of events) {
    now = at;
    if (kind === 1) momentary.begin(period.resource, now);
    else momentary.end(period.resource, now);
    most = Math.max(most, (momentary as unknown as { ended: unknown[] }).ended.length);
  }
  momentary.finish(now);
  return { sole: [...momentary.sole], shifting: [...momentary.shifting], most };
}

/** The definition with hindsight: from each handover the longest of the periods active just after it. */
function withHindsight(
  periods: readonly Active[],
  resources: number,
): { sole: number[]; shifting: number[] } {
  const sole = new Array<number>(resources).fill(0),
    shifting = new Array<number>(resources).fill(0);
  const longestAt = (time: number): Active | undefined =>
    periods
      .filter(({ begin, end }) => begin <= time && end > time)
      .sort((a, b) => b.end - b.begin - (a.end - a.begin) || a.end - b.end || a.resource - b.resource)[0];
  let present: Active | undefined,
    from = 0;
  for (;;) {
    if (present === undefined) {
      const rest = periods.filter(({ end }) => end > from);
      if (rest.length === 0) return { sole, shifting };
      from = Math.max(from, Math.min(...rest.map(({ begin }) => begin)));
      present = longestAt(from);
      continue;
    }
    const next = longestAt(present.end),
      overlap = next === undefined ? present.end : Math.min(present.end, Math.max(from, next.begin));
    sole[present.resource] += overlap - from;
    shifting[present.resource] += present.end - overlap;
    if (next !== undefined) shifting[next.resource] += present.end - overlap;
    from = present.end;
    present = next;
  }
}

describe('the momentary bottleneck', () => {
  it('is the longest active period; where two overlap it shifts', () => {
    // By hand: A works 0 to 10, B 6 to 20, A again 12 to 14, C 18 to 19; then B and C rest, A works 25 to 30.
    // Sole: A 0-6, B 10-20 (A's and C's periods inside are shorter), A 25-30. Shifting: A and B 6-10.
    const periods = [
      { resource: 0, begin: 0, end: 10 },
      { resource: 1, begin: 6, end: 20 },
      { resource: 0, begin: 12, end: 14 },
      { resource: 2, begin: 18, end: 19 },
      { resource: 0, begin: 25, end: 30 },
    ];
    expect(told(periods, 3)).toMatchObject({ sole: [11, 10, 0], shifting: [4, 4, 0] });
  });

  it('is what the definition gives with hindsight, and few periods are kept', () => {
    // Lengths differ by a fraction of their own, so that no two periods are equally long.
    const period = fc.record({
      gap: fc.integer({ min: 0, max: 12 }),
      length: fc.integer({ min: 1, max: 15 }),
    });
    fc.assert(
      fc.property(fc.array(fc.array(period, { maxLength: 30 }), { minLength: 1, maxLength: 5 }), (rows) => {
        let count = 0;
        const periods = rows.flatMap((row, resource) => {
          let at = 0;
          return row.map(({ gap, length }) => {
            const begin = at + gap,
              end = begin + length + ++count / 1024;
            at = end;
            return { resource, begin, end };
          });
        });
        const { sole, shifting } = told(periods, rows.length),
          wanted = withHindsight(periods, rows.length);
        wanted.sole.forEach((minutes, r) => {
          expect(sole[r]).toBeCloseTo(minutes, 6);
        });
        wanted.shifting.forEach((minutes, r) => {
          expect(shifting[r]).toBeCloseTo(minutes, 6);
        });
      }),
      { seed: 20270301, numRuns: 500 },
    );
  });

  it('keeps few periods however long the run is, also beside resources that never rest', () => {
    const short = Array.from({ length: 5000 }, (_, i) => ({
      resource: 2 + (i % 3),
      begin: 2 * i + 1,
      end: 2 * i + 2,
    }));
    const restless = [
      { resource: 0, begin: 0, end: 10_001 },
      { resource: 1, begin: 0.5, end: 10_001 },
    ];
    expect(told([...restless, ...short], 5).most).toBeLessThan(10);
    expect(told(short, 5).most).toBeLessThan(10);
  });
});
