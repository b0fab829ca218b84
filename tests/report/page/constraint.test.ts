import { describe, expect, it } from 'vitest';
import { constraintFindings, constraintTables, lossesTold } from '../../../src/report/page/constraint.js';
import { simulatePage } from '../../../src/report/page/studies/simulate.js';
import { pageTables } from '../../../src/report/page/tables.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { textRows } from '../samples/read.js';
import { sampleResults } from '../samples/results.js';

const results = sampleResults({ stations: 6, weeks: 20 });
const found = results.constraint!;
const table = (id: string, of = constraintTables(found)) => of.find((each) => each.id === id)!;

describe('what stops the build, on the page', () => {
  it('is the sentence', () => {
    expect(constraintFindings(found)).toEqual([found.sentence]);
    expect(constraintFindings(found, 'at 3.5 a day')).toEqual([
      `At 3.5 a day the station${found.sentence.slice('The station'.length)}`,
    ]);
    expect(constraintFindings(null)).toEqual([]);
  });

  it('says where the capacity goes, over how many builds, and nothing where nothing limits', () => {
    const told = lossesTold(found);
    expect(told.slice(0, 2)).toEqual([
      'By averages alone, the station top coat booth 6 would allow 4.2 units a day; 3.38 are shipped (3.29 to 3.47).',
      'The most is lost by this: short of crew, 0.75 a day (0.72 to 0.78).',
    ]);
    const more = { ...found.ladder!.shippedPerDay, mean: 3.4, low: 3.35, high: 3.45, n: 100 };
    expect(lossesTold(found, null, more)[0]).toMatch(
      /: over the \d+ builds in which losses were looked at\. Over all 100 it is 3\.40\.$/,
    );
    expect(lossesTold(found, 'at 3.5 a day')[0]).toMatch(/^At 3\.5 a day, by averages alone, /);
    expect(lossesTold({ ...found, ladder: null })).toEqual([]);
    expect(lossesTold(null)).toEqual([]);
  });

  it('says why what limits it is not at work all the time, the largest reason first', () => {
    const of = found.judged!.stations[0],
      share = (mean: number) => ({ ...of.share.working, mean }),
      station = {
        ...of,
        ...{ name: found.ladder!.of.name, site: found.ladder!.of.site },
        shareOnShift: {
          ...of.shareOnShift,
          working: share(0.5),
          unattended: share(0.2),
          changeover: share(0.04),
          'short of crew': share(0.2),
          'short of parts': share(0),
          'short of carrier': share(0),
          blocked: share(0.004),
          starved: share(0.056),
          down: share(0),
        },
      };
    expect(lossesTold({ ...found, judged: { ...found.judged!, stations: [station] } })[2]).toBe(
      'In the weeks judged top coat booth 6 is at work 74 % of its time on shift, changeovers included; else it ' +
        'waits for people 20 %, has no unit 6 %.',
    );
    expect(lossesTold({ ...found, judged: null })).toHaveLength(2);
  });

  it('has a row a trial with its gain, what it shows, and the hint', () => {
    expect(textRows(table('trials'))).toEqual([
      ['one place more at top coat booth 6', '0.31 (0.27 to 0.35)', 'stops it', '9.4'],
      [
        'one hour of overtime a day in "paint shifts" (23:30 to 00:30)',
        '0.20 (0.16 to 0.24)',
        'helps too',
        '4.7',
      ],
      ['one truck more on coachworks to paint', '0.01 (-0.03 to 0.05)', 'no gain seen', ''],
      [
        'one person more on every shift in painters (paint and finishing works)',
        '-0.02 (-0.06 to 0.02)',
        'no gain seen',
        '',
      ],
    ]);
    expect(table('trials').note).toContain('in brackets 99 % CI');
  });

  it('calls a gain that is sure but small too little to matter', () => {
    const little = { ...found.tried[2], gain: { mean: 0.02, low: 0.01, high: 0.03, level: 0.99, n: 20 } };
    expect(textRows(table('trials', constraintTables({ ...found, tried: [little] })))[0]?.[2]).toBe(
      'too little to matter',
    );
  });

  it('has a row a cause between both ends of the ladder', () => {
    expect(textRows(table('losses'))).toEqual([
      ['averages allow the station top coat booth 6', '4.2'],
      ['short of crew', '-0.75 (-0.78 to -0.72)'],
      ['blocked, no room ahead', '-0.120 (-0.130 to -0.110)'],
      ['changeovers beyond the average', '+0.05 (0.03 to 0.07)'],
      ['shipped', '3.38 (3.29 to 3.47)'],
    ]);
  });

  it('has no row where nothing was tried, nothing waits and nothing limits', () => {
    const bare = constraintTables({ ...found, tried: [], waiting: [], ladder: null });
    expect(bare.map(({ rows }) => rows.length)).toEqual([0, 0, 0]);
    expect(constraintTables(null)).toEqual([]);
  });
});

describe('a build that comes to a standstill', () => {
  const stuckIn = (replications: number) => ({
    ...results,
    findings: [{ kind: 'gridlock' as const, text: 'gridlock: a waits for b', replications }],
  });
  const tellsOf = (from: typeof results): boolean =>
    pageTables(from).some(({ id }) => id === 'losses') &&
    simulatePage(from).findings.some((text) => text.includes('stops it')) &&
    resultsTable(from).includes('averages allow');

  it('in every replication has nothing else that stops it; in some it has', () => {
    expect(tellsOf(stuckIn(39))).toBe(true);
    expect(simulatePage(stuckIn(40)).findings).toEqual(['Gridlock: a waits for b (in 40 of 40 builds)']);
    expect(pageTables(stuckIn(40)).map(({ id }) => id)).not.toContain('losses');
    expect(resultsTable(stuckIn(40))).not.toContain('averages allow');
  });
});

describe('means with replications in them that stood still', () => {
  it('say so under the answer and over every table of means, and nowhere else', () => {
    const note = '2 of 40 replications stood still (first on 2027-09-17); their values end there',
      standstill = {
        ...{ replications: 2, first: '2027-09-17', note },
        ...{ stood: [3, 9], help: null, ring: [], behind: 0, held: [] },
      },
      noted = pageTables({ ...results, standstill }).filter((table) => table.note.includes(note));
    expect(noted.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['overall', 'wip', 'stations', 'crews', 'inspections', 'lanes', 'buffers']),
    );
    expect(
      resultsTable({ ...results, standstill })
        .split('\n')
        .slice(0, 4),
    ).toContain(note);
    expect(JSON.stringify([pageTables(results), resultsTable(results)])).not.toContain('stood still');
  });
});

describe('tables over the weeks judged', () => {
  const inTable = (id: string, from = results) => {
    const table = pageTables(from).find((each) => each.id === id)!,
      { head } = table,
      rows = textRows(table);
    return (what: string, row = 0): string | undefined => rows[row]?.[head.indexOf(what)];
  };

  it('tell the weeks judged first, the whole run beside', () => {
    const used = inTable('bottlenecks');
    expect([used('Name'), used('Used, %'), used('Used over the whole run, %')]).toEqual([
      'top coat booth 6',
      '93.7 (92.8 to 94.6)',
      '93.0 (92.0 to 94.0)',
    ]);
    const crew = inTable('crews');
    expect([crew('Busy, %, weeks judged'), crew('Busy, %, whole run')]).toEqual([
      '59.5 (58.6 to 60.4)',
      '55.0 (54.0 to 56.0)',
    ]);
    const lane = inTable('lanes');
    expect(lane('Trucks busy, %, weeks judged')).toBe('49.6 (47.8 to 51.4)');
    const [station] = results.stations,
      [judged] = found.judged!.stations;
    const shown = (mean: number): RegExp => new RegExp(`^${(100 * mean).toFixed(1)} `);
    expect(inTable('stations')('working, %')).toMatch(shown(judged.share.working.mean));
    expect(inTable('stations')('working over the whole run, %')).toMatch(shown(station.share.working.mean));
    expect(judged.share.working.mean).toBeGreaterThan(station.share.working.mean + 0.005);
  });

  it('tell the whole run alone where no weeks are judged', () => {
    const whole = { ...results, constraint: { ...found, judged: null } };
    expect(inTable('bottlenecks', whole)('Used, %')).toBe('93.0 (92.0 to 94.0)');
    expect(inTable('bottlenecks', whole)('Used over the whole run, %')).toBeUndefined();
    expect(inTable('crews', whole)('Busy, %')).toBe('55.0 (54.0 to 56.0)');
  });
});
