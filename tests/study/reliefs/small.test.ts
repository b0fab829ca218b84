import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { crossFindings } from '../../../src/scenario/checks.js';
import { compile } from '../../../src/scenario/compile.js';
import { digest } from '../../../src/scenario/digest.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Supply } from '../../../src/scenario/types/plant.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { RELIEF_KINDS } from '../../../src/study/reliefs/relief.js';
import { reliefsOf } from '../../../src/study/reliefs/small.js';

/** All numbers are invented. */
const supplied = (packs: string): Scenario => {
  const { scenario, problems } = readScenario(
    `
scenario: made
programme: { start: 2027-04-05, quantity: 40, rate: { per day: 2 } }
sites: { a: { stations: { s: {} } } }
supplies: { packs: { site: a, at start: 2, ${packs} } }
route: [{ step: one, at: s, work: 0 min, parts: { packs: 1 } }]
`,
    'made.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
};
/** What is tried of a supply, by its text: the supply with it. */
const tried = (packs: string): Record<string, Supply> => {
  const scenario = supplied(packs);
  return Object.fromEntries(
    reliefsOf(scenario)
      .filter(({ of }) => of.kind === 'supply')
      .map(({ text, change }) => [text, change(scenario).supplies['packs']]),
  );
};

const folder = new URL('../../../scenarios/', import.meta.url);
const files = ['', 'rules/'].flatMap((room) =>
  readdirSync(new URL(room, folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${room}${name}`),
);
function scenarioOf(file: string): Scenario {
  const at = new URL(file, folder);
  const { scenario, problems } = readScenario(readFileSync(at, 'utf8'), file, (path) =>
    readFileSync(new URL(path, at), 'utf8'),
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

// The demo has 243 of them, each compiled.
describe('the reliefs of every scenario that comes with the program', { timeout: 300_000 }, () => {
  it.each(files)('%s: can be run, change something, and tell themselves apart', (file) => {
    const scenario = scenarioOf(file),
      reliefs = reliefsOf(scenario),
      before = digest(scenario);
    const digests = reliefs.map(({ text, change }) => {
      const changed = change(scenario);
      // As sound as a file that was read.
      expect(crossFindings(changed, true), text).toEqual([]);
      compile(changed);
      return digest(changed);
    });
    expect(digests).not.toContain(before);
    expect(digests).toHaveLength(new Set(digests).size);
    expect(reliefs).toHaveLength(new Set(reliefs.map(({ text }) => text)).size);
    expect(digest(scenario)).toBe(before);
  });

  it.each(files)('%s: are of what the capacity table has, by kind, name and site', (file) => {
    const scenario = scenarioOf(file),
      rows = new Set(
        capacity(compile(scenario), scenario).rows.map(({ kind, name, site }) => `${kind} ${name}, ${site}`),
      );
    for (const { of } of reliefsOf(scenario))
      if (['station', 'crew', 'carrier', 'lane', 'feeder', 'supply'].includes(of.kind))
        expect(rows).toContain(`${of.kind} ${of.name}, ${of.site}`);
  });

  it('are of every kind there is', () => {
    const seen = new Set(files.flatMap((file) => reliefsOf(scenarioOf(file)).map(({ kind }) => kind)));
    expect([...seen].sort()).toEqual([...RELIEF_KINDS].sort());
  });
});

describe('what is tried of a supply', () => {
  it('ordered by a level: a larger lot, a shorter lead time, a higher level', () => {
    const found = tried('reorder: { level: 4, lot: 1, lead time: 10 days }, safety stock: 3');
    expect(Object.keys(found)).toEqual([
      'larger lots of packs (2 instead of 1)',
      'lead time of packs a fifth shorter',
      'packs ordered at 5 instead of 4',
    ]);
    expect(found).toMatchObject({
      // Half as much again of one is two: at least one part more.
      'larger lots of packs (2 instead of 1)': { order: { lot: 2, level: 4, safetyStock: 3 } },
      'lead time of packs a fifth shorter': { order: { leadTime: { kind: 'constant', value: 8 * 1440 } } },
      'packs ordered at 5 instead of 4': { atStart: 2, order: { level: 5, safetyStock: 3, lot: 1 } },
    });
  });

  it('delivered by a rhythm: a larger lot, twice as often, a lot at the start, and late half as often', () => {
    const found = tried('deliveries: { lot: 10, every: 7 days }, late: { chance: 10 %, by: 2 days }');
    expect(found).toMatchObject({
      'larger lots of packs (15 instead of 10)': { order: { lot: 15, everyDays: 7 } },
      'two deliveries of packs in 7 days instead of one': { order: { lot: 10, everyDays: 3.5 } },
      '10 more of packs in stock at the start': { atStart: 12, order: { lot: 10, everyDays: 7 } },
      'lots of packs late half as often': { late: { chance: 0.05 } },
    });
    expect(Object.keys(found)).toHaveLength(4);
  });

  it('delivered every day: not twice a day, as a lot is there when the shift begins', () => {
    expect(Object.keys(tried('deliveries: { lot: 3, every: 1 day }'))).toEqual([
      'larger lots of packs (5 instead of 3)',
      '3 more of packs in stock at the start',
    ]);
  });

  it('delivered on dates: one more in the widest gap; of a single date, ahead of it', () => {
    const delivery = (dates: string): string[] =>
      Object.keys(tried(`deliveries: [${dates}]`)).filter((text) => text.startsWith('one delivery more'));
    // 10 days from 5 to 15 April and 10 on: the first of equal gaps, and 7 as on the 5th.
    expect(
      delivery('{ on: 2027-04-25, lot: 9 }, { on: 2027-04-05, lot: 7 }, { on: 2027-04-15, lot: 8 }'),
    ).toEqual(['one delivery more of packs (7 on 2027-04-10)']);
    expect(delivery('{ on: 2027-04-15, lot: 8 }')).toEqual(['one delivery more of packs (8 on 2027-04-10)']);
    // Days that follow each other, or one day: no gap.
    expect(delivery('{ on: 2027-04-05, lot: 7 }, { on: 2027-04-06, lot: 8 }')).toEqual([]);
    expect(delivery('{ on: 2027-04-05, lot: 7 }, { on: 2027-04-05, lot: 8 }')).toEqual([]);
  });
});

describe('what is not tried', () => {
  it('work that takes no time, and room inside a pulse line', () => {
    expect(
      reliefsOf(supplied('reorder: { level: 4, lot: 1, lead time: 10 days }')).map(({ kind }) => kind),
    ).not.toContain('work');
    const rooms = reliefsOf(scenarioOf('rules/01-pulse-line.yaml'))
      .filter(({ of }) => of.kind === 'room')
      .map(({ of }) => of.name);
    expect(rooms).not.toContain('marriage');
  });
});

describe('teams of one crew', () => {
  const crewed = (teams: string): string[] => {
    const { scenario, problems } = readScenario(
      `
scenario: made
programme: { start: 2027-04-05, quantity: 40, rate: { per day: 2 } }
sites: { a: { crews: { fitters: 6 }, stations: { s: {}, t: {} } } }
teams: ${teams}
route: [{ step: one, at: s, work: 2 h }, { step: two, at: t, work: 2 h }]
`,
      'made.yaml',
      () => '',
    );
    if (scenario === undefined) throw new Error(JSON.stringify(problems));
    return reliefsOf(scenario)
      .filter(({ kind }) => kind === 'team' || kind === 'person')
      .map(({ text, of: { kind, name, site } }) => `${text} | ${kind} ${name} ${site}`);
  };

  it('of one size are short of the same people; of two sizes each is tried', () => {
    expect(
      crewed(
        '{ x: { crew: fitters, people: 2, from: one, to: one }, y: { crew: fitters, people: 2, from: two, to: two } }',
      ),
    ).toEqual(['one team more of x or y (2 people more in fitters, a) | crew fitters a']);
    expect(
      crewed(
        '{ x: { crew: fitters, people: 1, from: one, to: one }, y: { crew: fitters, people: 3, from: two, to: two } }',
      ),
    ).toEqual([
      'one team more of x (one person more in fitters, a) | team x a',
      'one team more of y (3 people more in fitters, a) | team y a',
    ]);
  });
});
