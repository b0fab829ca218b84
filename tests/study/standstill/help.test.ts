import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';
import { helpSentence } from '../../../src/study/standstill/help.js';

async function simulated(yaml: string, replications = 3, workers = 1) {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', () => '');
  expect(problems).toBeUndefined();
  return simulateStudy({ scenario: scenario!, file: 'test.yaml', replications, seed: '1', workers });
}

/** What ends the standstill of a build in all replications; and that it does, by the changed text. */
async function ending(yaml: string, by: (yaml: string) => string) {
  const { standstill, findings } = await simulated(yaml),
    changed = await simulated(by(yaml));
  expect(changed.standstill).toBeNull();
  const { tried, sentence } = standstill!.help!;
  expect(findings[0].text).toContain(`. ${sentence}`);
  expect(tried.length).toBeLessThanOrEqual(6);
  return tried.filter(({ ends, of }) => ends === of).map(({ what }) => what);
}

const SENT_BACK = `
scenario: sent back
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { stations: { yard: { buffer: unlimited }, weld: { buffer: 1 }, check: {} } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 10 min, creates: { gap: 50 % } }
  - { step: check, at: check, work: 10 min, finds: { gap: { chance: 100 %, back to: weld, limit: 2 } } }
`;
const KIT_BENCH = `
scenario: kit bench
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bench: { places: 2, buffer: unlimited }, line: {}, end: { buffer: unlimited } } } }
feeders:
  looms: { stock: 1, at start: 1, route: [{ step: bind, at: bench, work: 30 min }] }
  dashboards: { stock: 2, at start: 2, full kit: false, route: [{ step: wire, at: bench, parts: { looms: 1 }, work: 10 min }] }
route: [{ step: fit, at: line, parts: { looms: 1, dashboards: 2 }, work: 5 min }]
`;

describe('what ends a standstill, by trial', () => {
  it('is a space for rework where units sent back meet a full line', async () => {
    const whats = await ending(SENT_BACK, (yaml) => yaml.replace('buffer: 1', 'buffer: 1, rework buffer: 1'));
    expect(whats).toContain('one space for rework ahead of weld');
  });

  it('is a third place of a bench that builds a part and what it goes into, or a bench of their own', async () => {
    expect(await ending(KIT_BENCH, (yaml) => yaml.replace('places: 2', 'places: 3'))).toEqual(
      expect.arrayContaining(['one place more at bench', 'a station of its own for dashboards, like bench']),
    );
  });

  it('is a station of its own for a step between whose visits the unit is elsewhere', async () => {
    const embrace = `
scenario: embrace
programme: { arrivals: saturated, quantity: 30 }
sites: { hall: { stations: { lathe: {}, mill: {} } } }
route:
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`;
    expect(
      await ending(embrace, (yaml) =>
        yaml
          .replace('lathe: {}', 'lathe: {}, second: {}')
          .replace('turn again, at: lathe', 'turn again, at: second'),
      ),
    ).toEqual(['a station of its own for turn again, like lathe']);
  });

  it('is `in rework: without`, or another carrier, where a unit sent back claims it again', async () => {
    // Unit 1 comes back to b without the dolly, which unit 2 has, who waits for b.
    const again = `
scenario: again
programme: { arrivals: 10 min, quantity: 12 }
sites: { hall: { stations: { a: { buffer: unlimited }, b: {}, c: { buffer: unlimited } } } }
defects: { gap: {} }
carriers: { dolly: { count: 1, from: one, to: two, in rework: again } }
route:
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, work: 10 min, creates: { gap: 100 % } }
  - { step: three, at: c, work: 5 min, finds: { gap: { chance: 99.999 %, back to: two, limit: 1 } } }
`;
    const whats = await ending(again, (yaml) => yaml.replace('in rework: again', 'in rework: without'));
    expect(whats).toContain('in rework: without for dolly');
  });

  it('is one person more where a team holds the only one', async () => {
    const kept = `
scenario: kept
programme: { arrivals: 5 min, quantity: 4 }
sites: { hall: { crews: { hands: 1 }, stations: { s: { buffer: unlimited }, a: {}, t: {}, e: {} } } }
teams: { pair: { crew: hands, people: 1, from: one, to: test } }
route:
  - { step: start, at: s, work: 5 min }
  - { step: one, at: a, work: 10 min }
  - { step: test, at: t, sample: 1 in 2, work: 10 min, fails: { chance: 100 %, back to: start, limit: 1 } }
  - { step: end, at: e, work: 5 min }
`;
    expect(await ending(kept, (yaml) => yaml.replace('hands: 1', 'hands: 2'))).toContain(
      'one team more of pair (one person more in hands, hall)',
    );
  });

  it('is more of a supply that ends', async () => {
    const bolts = `
scenario: bolts end
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 3 }
sites: { hall: { stations: { line: {} } } }
supplies: { bolts: { site: hall, at start: 3, deliveries: [{ on: 2027-03-01, lot: 5 }] } }
route: [{ step: fit, at: line, parts: { bolts: 3 }, work: 5 min }]
`;
    expect(await ending(bolts, (yaml) => yaml.replace('at start: 3', 'at start: 8'))).toEqual([
      '5 more of bolts in stock at the start',
      'larger lots of bolts (half as much again in each)',
    ]);
  });

  it('is nothing where none of those tried helps, and is said so', async () => {
    // Nobody will ever have enough.
    const { standstill } = await simulated(`
scenario: bolts end
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 300 }
sites: { hall: { stations: { line: {} } } }
supplies: { bolts: { site: hall, at start: 3, deliveries: [{ on: 2027-03-01, lot: 5 }] } }
route: [{ step: fit, at: line, parts: { bolts: 3 }, work: 5 min }]
`);
    expect(standstill!.help!.sentence).toMatch(/^None of the \d changes that were tried ends it$/);
  });

  it('is the same on any number of threads', async () => {
    const [one, two] = [await simulated(SENT_BACK, 4, 1), await simulated(SENT_BACK, 4, 2)];
    expect(two).toEqual(one);
    expect(one.standstill!.help!.tried.length).toBeGreaterThan(2);
  });
});

describe('the sentence', () => {
  const tried = (what: string, ends: number, of: number) => ({ what, ends, of });

  it('names all that end it, the best of the others, and counts the rest', () => {
    expect(
      helpSentence([tried('a', 20, 20), tried('b', 18, 20), tried('c', 0, 3), tried('d', 20, 20)], 20),
    ).toBe(
      'With a, or with d, all 20 builds go on to their end; with b 18 of 20 do; the other one tried does not help',
    );
  });
});
