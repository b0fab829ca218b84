import { describe, expect, it } from 'vitest';
import { lossLadder } from '../../../../src/report/charts/studies/constraint-ladder.js';
import { trialGains } from '../../../../src/report/charts/studies/constraint-trials.js';
import type { ConstraintResult } from '../../../../src/study/constraint/results.js';
import { axisTitle, datasets, results, titleOf } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

const found = results.constraint!;
const ladderOf = (from: ConstraintResult, asked: number | null = 4) => {
  const chart = lossLadder(from, asked);
  if (chart === null) throw new Error('expected a ladder');
  return chart;
};
type Spans = ([number, number] | null)[];
const spansOf = (chart: ReturnType<typeof ladderOf>, label: string): Spans =>
  datasets(chart).find((each) => each.label === label)?.data as Spans;

describe('the ladder of losses', () => {
  it('says what averages allow, what is shipped, and the largest loss', () => {
    expect(titleOf(ladderOf(found)).replaceAll('\u00a0', ' ')).toBe(
      '3.38 a day shipped of 4.2 that averages allow; largest loss: short of crew, 0.75',
    );
  });

  it('lets each bar begin where the one above ended, from averages down to what is shipped', () => {
    const chart = ladderOf(found);
    expect(chart.configuration.data.labels).toEqual([
      'averages allow the station top coat booth 6',
      'short of crew',
      'blocked, no room ahead',
      'changeovers beyond the average',
      'shipped',
    ]);
    // 4.2 - 0.75 = 3.45; 3.45 - 0.12 = 3.33; 3.33 + 0.05 = 3.38.
    const close = (spans: Spans) => spans.map((span) => span?.map((end) => Number(end.toFixed(9))) ?? null);
    expect(close(spansOf(chart, 'lost'))).toEqual([null, [3.45, 4.2], [3.33, 3.45], null, null]);
    expect(close(spansOf(chart, 'gained'))).toEqual([null, null, null, [3.33, 3.38], null]);
    // Of each cause around the level that it leads to: 3.45 +- 0.03, 3.33 +- 0.01, 3.38 +- 0.02; 3.38 +- 0.09.
    expect(close(spansOf(chart, ''))).toEqual([null, [3.42, 3.48], [3.32, 3.34], [3.36, 3.4], [3.29, 3.47]]);
  });

  it('says where the scale does not begin at 0, and begins there where most is lost', () => {
    expect(ladderOf(found).alt).toContain('The scale does not begin at 0.');
    const most = ladderOf({
      ...found,
      ladder: {
        ...found.ladder!,
        allowedPerDay: 9,
        losses: [{ cause: 'starved', perDay: { ...found.shippedPerDay, mean: 5.62 } }],
      },
    });
    expect(most.alt).not.toContain('does not begin');
    expect((most.configuration.options?.scales?.['x'] as { beginAtZero?: boolean }).beginAtZero).toBe(true);
    expect(datasets(most).map(({ label }) => label)).not.toContain('gained');
  });

  it('tells causes together that may as well bring as take, and none that surely takes', () => {
    const cause = (name: string, mean: number, half: number) => ({
      cause: name,
      perDay: { ...found.shippedPerDay, mean, low: mean - half, high: mean + half },
    });
    const losses = [
      cause('short of crew', 0.75, 0.03),
      cause('starved', 0.01, 0.02),
      cause('rework beyond the average', -0.02, 0.03),
      cause('blocked, no room ahead', 0.005, 0.001),
    ];
    const chart = ladderOf({ ...found, ladder: { ...found.ladder!, losses } });
    expect(chart.configuration.data.labels?.slice(1)).toEqual([
      'short of crew',
      'blocked, no room ahead',
      '2 others, none sure',
      'shipped',
    ]);
    // 4.2 - 0.75 - 0.005 = 3.445, and 0.01 more by both others together.
    expect(spansOf(chart, 'gained')[3]?.map((end) => Number(end.toFixed(9)))).toEqual([3.445, 3.455]);
  });

  it('is left out where there is none', () => {
    expect(lossLadder({ ...found, ladder: null }, 4)).toBeNull();
    expect(lossLadder(null, null)).toBeNull();
  });

  it('of a constraint that loses nothing says so', () => {
    const full = { ...found, ladder: { ...found.ladder!, allowedPerDay: 3.38, losses: [] } };
    expect(titleOf(ladderOf(full, null))).toMatch(/a day shipped of .*; nothing is lost$/);
  });
});

describe('the picture of trials', () => {
  it('says what stops it, and what brings how much', () => {
    const chart = trialGains(found)!;
    expect(titleOf(chart).replaceAll('\u00a0', ' ')).toBe(
      'The station top coat booth 6 stops it: one place more at top coat booth 6 brings 0.31 a day',
    );
    expect(axisTitle(chart, 'x')).toBe('gain, units a working day');
    expect(
      (datasets(chart).at(-1)?.data as Spans).map((span) => span?.map((end) => Number(end.toFixed(9)))),
    ).toEqual([
      [0.27, 0.35],
      [0.16, 0.24],
      [-0.03, 0.05],
      [-0.06, 0.02],
    ]);
  });

  it('says at which rate, and that nothing brings what matters', () => {
    const none = { ...found, outcome: 'none helps' as const, culprit: null };
    expect(titleOf(trialGains(found, 'at 3.5 a day')!)).toMatch(
      /^At 3\.5 a day the station top coat booth 6 stops/,
    );
    expect(titleOf(trialGains(none, 'at 3.5 a day')!)).toBe(
      'At 3.5 a day none of the 4 things that were tried brings enough to matter by itself',
    );
    expect(titleOf(trialGains({ ...none, tried: found.tried.slice(2, 3) })!)).toBe(
      'The one thing that was tried does not bring enough to matter',
    );
  });

  it('of one replication shows no interval and draws no conclusion', () => {
    const one = sampleResults({ stations: 6, weeks: 20, replications: 1 }).constraint;
    const chart = trialGains(one)!;
    expect(titleOf(chart)).toBe('What stops it cannot be told from one replication');
    expect(chart.alt).not.toMatch(/ CI|\d % interval/);
    expect(lossLadder(one, 4)!.alt).not.toMatch(/ CI|\d % interval/);
  });

  it('is left out where nothing was tried', () => {
    expect(trialGains({ ...found, tried: [] })).toBeNull();
    expect(trialGains(null)).toBeNull();
  });
});
