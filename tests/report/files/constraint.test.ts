import { describe, expect, it } from 'vitest';
import { lossesData, trialsData } from '../../../src/report/files/constraint.js';
import { csv, type FileTable } from '../../../src/report/files/folder/csv.js';
import { sampleResults } from '../samples/results.js';

const found = sampleResults({ stations: 6, weeks: 20 }).constraint!;
const rowsOf = (table: FileTable | null): string[][] =>
  csv(table!)
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));

describe('losses.csv', () => {
  it('adds up: all rows but the last to the last', () => {
    const [head, ...rows] = rowsOf(
        lossesData({
          ...found,
          ladder: {
            ...found.ladder!,
            losses: found.ladder!.losses.map((each, i) => ({ ...each, cause: `cause ${i}` })),
          },
        }),
      ),
      at = head.indexOf('per_day_mean'),
      values = rows.map((row) => Number(row[at]));
    expect(rows.map(([row]) => row)).toEqual(['arithmetic allows', 'cause', 'cause', 'cause', 'shipped']);
    expect(values.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBeCloseTo(values.at(-1)!, 9);
  });

  it('has the interval of each cause, losses below 0', () => {
    expect(csv(lossesData(found)!)).toContain(
      'cause,station,top coat booth 6,coachworks north,short of crew,-0.75,-0.78,-0.72\n',
    );
  });

  it('is left out where there is no ladder', () => {
    expect(lossesData({ ...found, ladder: null })).toBeNull();
    expect(lossesData(null)).toBeNull();
  });
});

describe('trials.csv', () => {
  it('has a row a trial with its gain, level, verdict and units waiting', () => {
    expect(csv(trialsData(found)!).split('\n').slice(0, 2)).toEqual([
      'tried,kind,name,site,gain_per_day_mean,gain_per_day_low,gain_per_day_high,level,verdict,waiting_units',
      'one place more at top coat booth 6,station,top coat booth 6,coachworks north,0.31,0.27,0.35,0.99,stops it,9.4',
    ]);
  });

  it('is left out where nothing was tried', () => {
    expect(trialsData({ ...found, tried: [] })).toBeNull();
    expect(trialsData(null)).toBeNull();
  });
});
