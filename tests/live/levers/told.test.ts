import { describe, expect, it } from 'vitest';
import type { Moved } from '../../../src/live/levers/kept.js';
import {
  differenceText,
  headline,
  linesOf,
  priceText,
  rangeText,
  reasons,
} from '../../../src/live/levers/told.js';
import type { ComparedMeasure } from '../../../src/study/compare/results.js';
import type { Results } from '../../../src/study/simulate/results.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';
import { sampleResults } from '../../report/samples/results.js';

const around = (mean: number, half: number): Estimate => ({
  ...{ mean, level: 0.95, n: 40 },
  low: mean - half,
  high: mean + half,
});
const report: Results = { ...sampleResults({}), constraint: null },
  verdicts = (verdict: Results['answer']['verdict']): Results => ({
    ...report,
    answer: { ...report.answer, verdict },
  });
const row = (
  measure: ComparedMeasure['measure'],
  value: number,
  by: number,
  half: number,
  verdict: ComparedMeasure['verdict'],
): ComparedMeasure => ({
  ...{ measure, relative: null, pairingGain: null },
  value: around(value, half),
  difference: around(by, half),
  verdict,
  words: verdict,
});
const moved = (to: number, price: number | null, name = 'bay'): Moved => ({
  lever: { name, path: [], change: 'x', unit: '', now: 2, from: 1, to: 4, step: 1, price },
  to,
});

describe('what the page tells of changes', () => {
  it('says sooner and later of dates, and more and less by its sign', () => {
    expect(differenceText(row('last unit', 100, -9, 2, 'better'))).toBe('9 days sooner (7 to 11)');
    expect(differenceText(row('last unit', 100, 9, 2, 'worse'))).toBe('9 days later (7 to 11)');
    expect(differenceText(row('cost', 100, -900, 20, 'better'))).toMatch(/^-900 \(-920 to -880\)$/);
  });

  it('says so where a difference does not matter or is not settled, and where there is none', () => {
    expect(differenceText(row('throughput', 3, 0.01, 0.02, 'no difference that matters'))).toContain(
      '; no difference that matters',
    );
    expect(differenceText(row('throughput', 3, 0.3, 0.5, 'not settled'))).toContain('; not settled');
    expect(differenceText(row('throughput', 3, 0, 0, 'no difference that matters'))).toBe('none');
  });

  it('counts the builds while they are run, and names a cause only at the end', () => {
    const rows = [row('throughput', 3.7, 0.3, 0.05, 'better')];
    expect(headline(report, rows, 5, null)).toMatch(
      /^3\.7\d* a day \(.*\), \+0\.3\d* against the report, in 5 of 40 builds\.$/,
    );
    expect(headline(report, rows, 40, report)).not.toMatch(/ of 40|stops it/);
    expect(headline(report, rows, 40, sampleResults({}))).toMatch(/; then .* stops it\.$/);
  });

  it('has a sentence of its own for each verdict on the rate that is asked', () => {
    expect(reasons(verdicts('holds'))).toBe('It holds 4 a day.');
    expect(reasons(verdicts('falls short'))).toBe('It falls short of the 4 a day that are asked.');
    expect(reasons(verdicts('not settled'))).toBe('Whether it holds 4 a day is not settled.');
  });

  it('sets the report beside the changes, with the dates once all builds are in', () => {
    const rows = [row('throughput', 3.7, 0.3, 0.05, 'better'), row('last unit', 100, -9, 2, 'better')],
      alone = linesOf(report, [], null),
      some = linesOf(report, rows, null),
      all = linesOf(report, rows, report);
    expect(alone.map(({ report: there }) => there).every((text) => text !== '')).toBe(true);
    expect(alone.every(({ now, difference }) => now === '' && difference === '')).toBe(true);
    const last = (lines: typeof all) =>
      lines.find(({ name }) => name === 'last unit out in half of the builds');
    expect(last(some)).toMatchObject({ now: '', difference: '9 days sooner (7 to 11)' });
    expect(last(all)?.now).toBe(last(all)?.report);
  });

  it('prices what is bought, not what is given up, and names what has no price', () => {
    const { quantity } = report.programme,
      text = priceText([moved(4, 100_000), moved(1, 5_000, 'truck'), moved(3, null, 'fitters')], report);
    expect(text).toContain('Once: 200,000');
    expect(text).toContain(`over each of ${quantity ?? 0} units`);
    expect(text).toContain('Without a price of its own: fitters.');
    expect(priceText([moved(1, 5_000)], report)).toBe('');
  });

  it('says which numbers nobody has looked at', () => {
    expect(rangeText([moved(4, null), moved(1, null)])).toBe('');
    expect(rangeText([moved(5, null)])).toMatch(
      /^Outside what the planner has looked at: bay \(looked at: 1 to 4\)\./,
    );
  });
});
