import { describe, expect, it } from 'vitest';
import { constraintLines, usedLines } from '../../../src/report/terminal/constraint.js';
import { lines, WIDTH } from '../../../src/report/terminal/lines.js';
import type { ConstraintResult } from '../../../src/study/constraint/results.js';
import { sampleResults } from '../samples/results.js';

const results = sampleResults({ stations: 6, weeks: 20 });
const found = results.constraint!;
const text = (from: ConstraintResult, at: string | null = null): string[] =>
  constraintLines(from, at).flatMap((piece) =>
    typeof piece === 'string' ? lines(piece) : piece(WIDTH).split('\n'),
  );

describe('what stops the build, in the terminal', () => {
  it('is told by what was tried, without the sentence that stands above', () => {
    expect(text(found).join(' ')).not.toContain('stops it');
    expect(text(found).slice(0, 2)).toEqual([
      '',
      'tried under the same chance, 20 builds                         a day more  between, all together',
    ]);
  });

  it('names the rate where there are several', () => {
    expect(text(found, 'at 3.5 a day').slice(0, 3)).toEqual(['', 'at 3.5 a day:', '']);
  });

  it('goes from what averages allow down to what is shipped, the largest loss first, gains last', () => {
    const lines = text(found),
      from = lines.findIndex((line) => line.startsWith('averages allow'));
    expect(lines.slice(from).map((line) => line.replaceAll(/ +/g, ' '))).toEqual([
      'averages allow the station top coat booth 6 4.2',
      ' short of crew -0.75 -0.78 to -0.72',
      ' blocked, no room ahead -0.120 -0.130 to -0.110',
      ' changeovers beyond the average +0.05 0.03 to 0.07',
      'shipped 3.38 3.29 to 3.47',
    ]);
  });

  it('leaves out what was not tried and a ladder that there is not', () => {
    expect(text({ ...found, tried: [], ladder: null })).toEqual([]);
  });

  it('cuts texts, never figures, to 100 columns', () => {
    const long =
      'station for the rear body, left side and roof module, behind the hall of the old paint line 12';
    const wide = {
      ...found,
      tried: found.tried.map((each) => ({
        ...each,
        what: `one place more at ${long}`,
        gain: { ...each.gain, mean: -0.0312, low: -0.0345, high: -0.0279 },
      })),
      ladder: found.ladder && {
        ...found.ladder,
        of: { ...found.ladder.of, name: long },
        losses: found.ladder.losses.map(({ perDay }) => ({ cause: long, perDay })),
      },
    };
    const lines = text(wide);
    for (const line of lines) expect(Array.from(line).length, line).toBeLessThanOrEqual(100);
    expect(lines.filter((line) => line.endsWith('  -0.031  -0.035 to -0.028'))).toHaveLength(4);
    expect(lines.filter((line) => line.endsWith('-0.75  -0.78 to -0.72'))).toHaveLength(1);
  });

  it('tells of one replication that it has no intervals', () => {
    const one = sampleResults({ stations: 6, weeks: 20, replications: 1 }).constraint!;
    expect(text(one)).toContain(
      'tried under the same chance, 1 build                           a day more  interval',
    );
    expect(text(one).filter((line) => line.endsWith('no interval'))).toHaveLength(4 + 3 + 1);
  });
});

describe('what is used most, in the terminal', () => {
  const used = (judged: ConstraintResult['judged']): string[] =>
    usedLines(judged, results.bottlenecks, results).flatMap((piece) =>
      typeof piece === 'string' ? lines(piece) : piece(WIDTH).split('\n'),
    );

  it('is told for the weeks judged, with the whole run beside, the highest first', () => {
    expect(used(found.judged)).toEqual([
      '',
      'used most, % of its time (95 %)   judged 2027-06-07 to 2027-07-12  whole run',
      '--------------------------------  -------------------------------  -------------------',
      'top coat booth 6 (station)        93.7 (92.8 to 94.6)              93.0 (92.0 to 94.0)',
      'electricians (crew)               91.0 (90.1 to 91.9)              90.0 (89.0 to 91.0)',
      'seal seams underbody 2 (station)  88.3 (87.4 to 89.2)              87.0 (86.0 to 88.0)',
    ]);
  });

  it('is that of the whole run where no weeks are judged', () => {
    expect(used(null).slice(1, 4)).toEqual([
      'used most, % of its time (95 %)   whole run',
      '--------------------------------  -------------------',
      'top coat booth 6 (station)        93.0 (92.0 to 94.0)',
    ]);
  });
});
