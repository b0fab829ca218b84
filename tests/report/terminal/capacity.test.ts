import { describe, expect, it } from 'vitest';
import { capacityJson, capacityTable } from '../../../src/report/terminal/capacity.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { CapacityRow, CapacityTable } from '../../../src/study/capacity/capacity.js';
import { listedChanges } from '../../../src/study/priced/listed.js';

/** All numbers are invented; the load is the asked rate, 4, over the capacity. */
function row(name: string, capacityPerDay: number | null, more: Partial<CapacityRow> = {}): CapacityRow {
  return {
    kind: 'station',
    name,
    site: 'works',
    visitsPerUnit: 1.06,
    minutesPerUnit: 120,
    availableMinutesPerDay: 480,
    capacityPerDay,
    load: capacityPerDay === null ? 0 : 4 / capacityPerDay,
    loadAlone: null,
    ...more,
  };
}
function found(
  rows: readonly CapacityRow[],
  bottleneck: CapacityRow | null,
  more: Partial<CapacityTable> = {},
): CapacityTable {
  return {
    rows,
    bottleneck,
    rateUnit: { per: 'day', workingDays: 1 },
    askedPerDay: 4,
    highestRatePerDay: bottleneck?.capacityPerDay ?? null,
    note: null,
    ...more,
  };
}
const slow = row('top coat booth', 3.7);
const table = found(
  [row('wash bay', 5), row('yard', null), slow, row('painters', 4.5, { kind: 'crew' })],
  slow,
);
const namesIn = (text: string): string[] =>
  text
    .split('\n')
    .filter((line) => / (station|crew|lane|feeder) /.test(line))
    .map((line) => line.split(/ {2,}/)[0]);

describe('the capacity table', () => {
  it('begins with the bottleneck, the highest rate and the rate asked', () => {
    expect(capacityTable(table, 'invented').split('\n')[0]).toBe(
      'bottleneck by arithmetic: top coat booth (station), at most 3.7 units a working day, 4 asked',
    );
  });

  it('puts the tightest first, of every kind, and what has no limit last', () => {
    expect(namesIn(capacityTable(table, 'invented'))).toEqual([
      'top coat booth',
      'painters',
      'wash bay',
      'yard',
    ]);
  });

  it('orders by capacity where no rate is asked, and shows no load', () => {
    const rows = [row('wash bay', 5, { load: null }), row('booth', 3, { load: null })];
    const text = capacityTable(found(rows, rows[1], { askedPerDay: null }), 'invented');
    expect(namesIn(text)).toEqual(['booth', 'wash bay']);
    expect(text).toMatch(/^booth .* -$/m);
    expect(text.split('\n')[0]).not.toContain('asked');
  });

  it('says so where nothing limits the rate', () => {
    expect(capacityTable(found([row('yard', null)], null), 'invented').split('\n')[0]).toBe(
      'bottleneck by arithmetic: none, nothing limits the rate, 4 asked',
    );
  });

  it('keeps to 100 columns with the longest names', () => {
    const long = row('n'.repeat(80), 1234.5, {
      site: 's'.repeat(80),
      kind: 'feeder',
      availableMinutesPerDay: 123456,
      minutesPerUnit: 12345.6,
      load: 12.345,
    });
    for (const line of capacityTable(found([long], long), 'x'.repeat(200)).split('\n'))
      expect(Array.from(line).length).toBeLessThanOrEqual(100);
  });

  it('says of what is kept by units that its load is the least it can be, and about how much it is with waits', () => {
    const dollies = row('dollies', 14, { kind: 'carrier', load: 0.28, loadAlone: 0.81 }),
      text = capacityTable(found([slow, dollies], slow), 'invented');
    expect(text).toMatch(/^dollies +carrier .* ≥ 28 %$/m);
    expect(text.replace(/\s+/g, ' ')).toMatch(
      /≥: at least, .* no more units than this are carried about, with .*: dollies 81 %$/,
    );
    expect(capacityTable(table, 'invented')).not.toMatch(/≥|about/);
  });

  it('is no wider than 80 columns where that is the width, names whole', () => {
    const rows = [row('rear body fixture, left side', 3.7), row('rear body fixture, right side', 3.9)];
    const text = capacityTable(found(rows, rows[0]), 'invented', [], 80);
    for (const line of text.split('\n')) expect(Array.from(line).length, line).toBeLessThanOrEqual(80);
    expect(text.replace(/\s+/g, ' ')).toContain('rear body fixture, left side (station)');
    for (const word of ['left', 'right', 'side']) expect(text).toMatch(new RegExp(`^ *.*${word}`, 'm'));
  });

  it('shows what the arithmetic had to simplify', () => {
    expect(capacityTable(found([slow], slow, { note: 'more than 256 combinations' }), 'invented')).toMatch(
      /^more than 256 combinations$/m,
    );
  });
});

describe('capacity as JSON', () => {
  it('holds every row in the order of the scenario', () => {
    const json = JSON.parse(capacityJson(table, { name: 'invented', file: 'line.yaml' })) as CapacityTable & {
      format: string;
      version: number;
      scenario: unknown;
    };
    expect(json).toMatchObject({
      format: 'rateproof capacity',
      version: 1,
      scenario: { name: 'invented', file: 'line.yaml' },
      highestRatePerDay: 3.7,
      bottleneck: { name: 'top coat booth' },
    });
    expect(json.rows.map((each) => each.name)).toEqual(['wash bay', 'yard', 'top coat booth', 'painters']);
  });

  it('writes a load without bound, which JSON cannot hold, as null with a capacity of 0', () => {
    const none = row('lane without a departure', 0, { load: Infinity });
    const json = JSON.parse(
      capacityJson(found([none], none), { name: 'invented', file: 'line.yaml' }),
    ) as CapacityTable;
    expect(json.rows[0]).toMatchObject({ capacityPerDay: 0, load: null });
    expect(json.bottleneck).toMatchObject({ capacityPerDay: 0, load: null });
    expect(capacityTable(found([none], none), 'invented')).toMatch(/no end$/m);
  });
});

describe('the table of possible changes', () => {
  const withChanges = (changes: string): string => {
    const { scenario, problems } = readScenario(
      `
scenario: invented
programme: { start: 2027-04-05, quantity: 40, rate: { per day: 2 } }
sites: { a: { crews: { crew: 3 }, stations: { s: { buffer: 1, rework buffer: 1 } } } }
route: [{ step: one, at: s, work: 1 h, crew: { crew: 1 } }]
costs:
  currency: EUR
  changes: {${changes}}
`,
      'made.yaml',
      () => '',
    );
    if (scenario === undefined) throw new Error(JSON.stringify(problems));
    return capacityTable(table, 'invented', [], 120, listedChanges(scenario));
  };
  it('says of each what it is, its price, how soon it is there and how often, and whether it is made', () => {
    const text = withChanges(`
      booth: { relief: place, of: s, price: 420000, day: 40, ready after: 5 months, at most: 2, made: { times: 2, from: 2027-12-01 } },
      shelf: { relief: space, of: s, site: a, which: rework, made: yes },
      night: { changes: [{ sites.a.crews.crew: 5, programme.quantity: 41 }], ready after: 1 week },
    `);
    expect(text.split('\n').slice(-7)).toEqual([
      'possible change  what                 price, EUR  a day  ready after  at most  made',
      '---------------  -------------------  ----------  -----  -----------  -------  -----------------------',
      'booth            place: s                420,000     40  5 months           2  2 times from 2027-12-01',
      'shelf            space: s, a, rework           -      -  at once            -  yes',
      'night            2 edits                       -      -  1 week             1  -',
      '',
      'what is made is counted in the capacity above, as from the last of its days on',
    ]);
  });
  it('is left out where the scenario names none, and says nothing of capacity where none is made', () => {
    expect(withChanges('')).toBe(capacityTable(table, 'invented', [], 120));
    expect(withChanges(' shelf: { relief: space, of: s } ')).not.toContain('what is made');
  });
});

describe('warnings of shapes', () => {
  const warning = (at: string) => ({
    ...{ at: `line.yaml:${at}`, path: 'route[2].finds.gap.back to' },
    ...{ text: 'units sent back to weld may stand for good', remedy: 'a rework buffer at weld' },
  });
  const text = (count: number): string =>
    capacityTable(
      table,
      'invented',
      [],
      200,
      undefined,
      Array.from({ length: count }, (_, i) => warning(`${i}:5`)),
    );

  it('stand below the table with line and remedy, ten at most', () => {
    expect(text(1)).toContain(
      '\nwarning: line.yaml:0:5 route[2].finds.gap.back to: units sent back to weld may stand for good; ' +
        'what rules it out: a rework buffer at weld',
    );
    expect(text(12).match(/^warning: /gm)).toHaveLength(10);
    expect(text(12)).toMatch(/^and 2 more, with --json$/m);
    expect(text(0)).not.toContain('standstill');
  });

  it('are all in the data', () => {
    const json = JSON.parse(
      capacityJson(table, { name: 'invented', file: 'line.yaml' }, [warning('9:5')]),
    ) as { readonly warnings: readonly unknown[] };
    expect(json.warnings).toEqual([warning('9:5')]);
  });
});
