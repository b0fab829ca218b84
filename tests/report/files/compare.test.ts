import { describe, expect, it } from 'vitest';
import { compareFiles } from '../../../src/report/files/compare.js';
import { compareFirst } from '../../../src/report/first/compare.js';
import { compareTable } from '../../../src/report/terminal/compare.js';
import { readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { compareDesign } from '../../../src/study/compare/design.js';
import { answerOf } from '../../../src/study/run/fixed-design.js';
import { asRead } from '../samples/read.js';

const YAML = `
scenario: bench & trim
programme: { start: 2027-03-01, quantity: 60, rate: { per day: 3 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: unlimited }, trim bench: { buffer: unlimited } } } }
route:
  - { step: build, at: bench, work: { low: 100 min, high: 240 min } }
  - { step: trim, at: trim bench, work: 1 h }
`;
const WHAT_IFS = `
two benches: { note: "dear, <and> big", changes: { sites.works.stations.bench.places: 2 } }
slower trim: { changes: { route.trim.work: 61 min } }
`;

describe('the report of a comparison', async () => {
  const { scenario } = readScenario(YAML, 'line.yaml', () => ''),
    { whatIfs } = readWhatIfs(WHAT_IFS, 'what-ifs.yaml', { text: YAML, file: 'line.yaml' }, () => '');
  const design = compareDesign({
    scenario: scenario!,
    file: 'line.yaml',
    whatIfs: whatIfs!,
    whatIfsFile: 'what-ifs.yaml',
    replications: 6,
    seed: '1',
    level: 0.95,
  });
  const { results } = await answerOf(design, { workers: 1 });
  const files = await compareFiles(results),
    page = asRead(files.get('report.html'));

  it('has pictures, a page, data and two tables', () => {
    expect([...files.keys()].sort()).toEqual([
      '01-differences.png',
      '02-throughput-by-week.png',
      '03-wip-by-week.png',
      'differences.csv',
      'report.html',
      'report.xlsx',
      'results.json',
      'runs.csv',
    ]);
    for (const name of files.keys())
      if (name.endsWith('.png')) expect(page).toContain(`data-picture="${name.slice(0, -4)}"`);
  });

  it('has a row for each what-if and measure, and one for each variant and replication', () => {
    const rows = String(files.get('differences.csv')).trim().split('\n');
    expect(rows).toHaveLength(1 + 2 * 5);
    expect(rows[1]).toMatch(/^two benches,throughput,units a working day,more,/);
    expect(rows[1].split(',')).toHaveLength(rows[0].split(',').length);
    expect(String(files.get('runs.csv')).trim().split('\n')).toHaveLength(1 + 3 * 6);
    expect(results.runs.map(({ variant }) => variant)).toContain('base');
  });

  it('tells the changes, the verdicts and the level of the differences, and escapes names and notes', () => {
    expect(page).toContain('sites.works.stations.bench.places');
    expect(page).toContain('dear, &lt;and&gt; big');
    expect(page).toContain('bench &amp; trim');
    // Two what-ifs in five measures: 1 - 0.05 / 10.
    expect(results.differenceLevel).toBeCloseTo(0.995, 12);
    expect(page).toContain(
      '99.5 % CI, so that all 10 differences hold together with 95 % (Bonferroni), and with them all that the answer says',
    );
  });

  it('prints a table of at most 100 columns with the answer first', () => {
    const lines = compareTable(results).split('\n');
    expect(lines[0]).toBe(compareFirst(results).answer);
    expect(lines.find((line) => line.startsWith('In full: '))).toMatch(/^In full: The base ships /);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(lines).toContain('6 builds of each tried, seed 1, the same chance in all');
    expect(lines).toContain('between: all differences hold together, 95 %');
    // Both what-ifs under each of five measures.
    expect(lines.filter((line) => line.startsWith('  two benches '))).toHaveLength(5);
  });

  it('judges the throughput of all in the weeks in which the base is judged', () => {
    expect(results.window).not.toBeNull();
    expect(results.window!.from >= '2027-03-01').toBe(true);
    // Nobody ships more than the three a day that are released, in the long run.
    expect(results.whatIfs[0].compared[0].value.mean).toBeLessThanOrEqual(3.3);
  });
});
