import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import { findRelief } from '../../../src/scenario/reliefs/named.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { offerOfMade } from '../../../src/study/priced/offers.js';
import { PossibleChanges } from '../../../src/study/priced/sets.js';
import { reliefsOf } from '../../../src/study/reliefs/small.js';

/** All numbers are invented. */
const yaml = (places = 1, welders = 3, buffer = 1, standing = '', rework = 2): string => `
scenario: sets
programme: { start: 2028-01-31, quantity: 40, rate: { per day: 2 } }
sites:
  a: { zone: Europe/Oslo, crews: { welders: ${welders} }, stations: { jig: { places: ${places}, buffer: ${buffer}, rework buffer: ${rework} }, check: {} } }
  b: { zone: Europe/Oslo, crews: { welders: 2 }, stations: { bay: { buffer: 2 } } }
defects: { crack: {}, dent: {} }
lanes: { road: { from: a, to: b, trucks: 1, capacity: 1, drive: 1 h, bank: 2, arrival bank: 3 } }
route:
  - { step: weld, at: jig, work: 60 min, crew: { welders: 1 }, creates: { crack: 10 %, dent: 5 % } }
  - { step: look, at: check, work: 10 min, finds: { crack: { chance: 90 %, repair: 5 min }, dent: { chance: 50 %, repair: 1 min } } }
  - lane: road
  - { step: fit, at: bay, work: 30 min, crew: { welders: 1 } }
costs:
  currency: EUR${standing}
  changes:
    jig more: { relief: place, of: jig, price: 1000, day: 4, ready after: 1 month, at most: 2 }
    welders: { changes: [{ sites.a.crews.welders: 5 }], price: 300, ready after: 4 weeks, requires: jig more }
    fewer welders: { changes: [{ sites.a.crews.welders: 2 }], excludes: [welders] }
    shelf: { relief: space, of: jig, price: 10 }
    rework shelf: { relief: space, of: jig, which: rework }
`;
const scenarioOf = (text: string): Scenario => {
  const { scenario, problems } = readScenario(text, 'made.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
};
const base = scenarioOf(yaml()),
  possible = new PossibleChanges(
    base,
    scenarioData(yaml(), 'made.yaml', () => ''),
  ),
  set = (...names: [string, number][]): ReadonlyMap<string, number> => new Map(names);

describe('a set of changes', () => {
  it('makes the scenario that a planner would write by hand, running price and all', () => {
    expect(digest(possible.made(set(['jig more', 2], ['welders', 1], ['shelf', 3])))).toBe(
      digest(scenarioOf(yaml(3, 5, 4, '\n  standing: { day: 8 }'))),
    );
    expect(digest(possible.made(set(['rework shelf', 1])))).toBe(digest(scenarioOf(yaml(1, 3, 1, '', 3))));
    expect(digest(possible.made(set()))).toBe(digest(base));
  });

  it('costs what its changes cost, and is there when the last of them is', () => {
    // 2 x 1000 + 300; a month from 31 January is 29 February, 4 weeks are 28 February.
    expect(possible.terms(set(['jig more', 2], ['welders', 1]))).toEqual({
      ...{ price: 2300, unpriced: [], day: 8 },
      ...{ readyAfter: { count: 1, unit: 'month' }, readyOn: '2028-02-29' },
    });
    // From 1 February a month and 4 weeks are both 29 days and 28: 1 March and 29 February.
    expect(possible.terms(set(['welders', 1]), '2028-02-01').readyOn).toBe('2028-02-29');
    expect(possible.terms(set(['fewer welders', 1], ['shelf', 1]))).toEqual({
      ...{ price: 10, unpriced: ['fewer welders'], day: 0, readyAfter: undefined, readyOn: '2028-01-31' },
    });
  });

  it('is forbidden by limits, by what it lacks and by what it excludes, whoever says so', () => {
    expect(possible.forbidden(set(['jig more', 2], ['welders', 1]))).toBeNull();
    expect(possible.forbidden(set(['jig more', 3]))).toBe('"jig more" can be made 2 times');
    expect(possible.forbidden(set(['fewer welders', 2]))).toBe('"fewer welders" can be made once');
    expect(possible.forbidden(set(['welders', 1]))).toBe('"welders" requires "jig more"');
    expect(possible.forbidden(set(['jig more', 1], ['welders', 1], ['fewer welders', 1]))).toBe(
      '"fewer welders" excludes "welders"',
    );
    expect([...possible.withRequired('welders').keys()]).toEqual(['jig more', 'welders']);
  });

  it('is there change by change if it is ordered on a day, none before what it requires', () => {
    const all = set(['welders', 1], ['jig more', 2], ['shelf', 3]);
    // Four weeks from 14 February are 13 March; a month, which the welders wait for, ends on 14 March.
    expect(possible.dated(all, '2028-02-14')).toEqual([
      { name: 'welders', times: 1, from: '2028-03-14' },
      { name: 'jig more', times: 2, from: '2028-03-14' },
      { name: 'shelf', times: 3, from: '2028-02-14' },
    ]);
    const planned = yaml()
      .replace('at most: 2', 'at most: 2, made: { times: 2, from: 2028-03-14 }')
      .replace('requires: jig more', 'requires: jig more, made: 2028-03-14')
      .replace('price: 10 }', 'price: 10, made: { times: 3, from: 2028-02-14 } }');
    const made = possible.made(all, '2028-02-14');
    expect(digest(made)).toBe(digest(scenarioOf(planned)));
    expect(made.before?.map(({ until }) => until)).toEqual(['2028-02-14', '2028-03-14']);
    // Ordered early enough, all of it is there on the first day.
    expect(possible.dated(all, '2027-12-31').map(({ from }) => from)).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(digest(possible.made(all, '2027-12-31'))).toBe(digest(possible.made(all)));
  });

  it('is the same beside what is made already as all of it at once', () => {
    const half = yaml().replace('at most: 2', 'at most: 2, made: { times: 1, from: 2028-03-01 }'),
      rest = new PossibleChanges(
        scenarioOf(half),
        scenarioData(half, 'made.yaml', () => ''),
      );
    expect(rest.forbidden(set(['jig more', 2]))).toBe('"jig more" can be made once');
    expect([...rest.withRequired('welders').keys()]).toEqual(['welders']);
    // Never before the place that they require.
    expect(rest.dated(set(['welders', 1]), '2028-01-31')).toEqual([
      { name: 'welders', times: 1, from: '2028-03-01' },
    ]);
    expect(digest(rest.made(set(['shelf', 2], ['welders', 1]), '2028-02-07'))).toBe(
      digest(
        scenarioOf(
          half
            .replace('requires: jig more', 'requires: jig more, made: 2028-03-06')
            .replace('price: 10 }', 'price: 10, made: { times: 2, from: 2028-02-07 } }'),
        ),
      ),
    );
    expect(digest(rest.made(set()))).toBe(digest(scenarioOf(half)));
  });

  it('is priced where another scenario makes it and nothing less', () => {
    const other = (...edits: [string, string][]): Scenario =>
      scenarioOf(edits.reduce((text, [from, to]) => text.replace(from, to), yaml()));
    const jig = (made: string): [string, string] => ['at most: 2', `at most: 2, made: ${made}`],
      crew: [string, string] = ['requires: jig more', 'requires: jig more, made: 2028-03-14'];
    expect(offerOfMade(base, other(jig('{ times: 2 }'), crew))).toEqual({
      ...{ names: ['jig more', 'welders'], currency: 'EUR', price: 2300, pricePerUnit: 57.5, day: 8 },
      ...{ readyAfter: '1 month', atMost: null, needs: [] },
    });
    expect(offerOfMade(other(jig('yes')), other(jig('{ times: 2 }')))).toMatchObject({ price: 1000 });
    expect(offerOfMade(other(jig('yes')), other(jig('2028-03-14'), crew))).toBeUndefined();
    expect(offerOfMade(other(jig('yes')), base)).toBeUndefined();
    expect(offerOfMade(base, base)).toBeUndefined();
  });

  it('is refused in words where two of its bundles change the same value', () => {
    expect(() => possible.made(set(['welders', 1], ['fewer welders', 1]))).toThrow(
      /^"welders" with "fewer welders": expected each value changed once/,
    );
  });
});

describe('a relief by its name', () => {
  const found = (kind: 'person' | 'space' | 'place' | 'defect', of: string, site?: string, which?: string) =>
    findRelief(base, { kind, of, site, which });
  it('is the one that reliefs tries', () => {
    expect(found('space', 'jig').relief?.text).toBe('one space more ahead of jig');
    expect(found('space', 'jig', undefined, 'rework').relief?.text).toBe(
      'one space more for rework ahead of jig',
    );
    expect(found('space', 'road', undefined, 'arrival bank').relief?.text).toBe(
      'one space more behind lane road',
    );
    expect(found('person', 'welders', 'b').relief?.text).toBe('one person more in welders (b)');
    expect(found('defect', 'weld', undefined, 'dent').relief?.text).toBe('half as much dent from weld');
  });
  it('is asked for by site and which where there are several', () => {
    expect(found('person', 'welders').fault).toMatchObject({ key: 'site', wanted: 'one of "a", "b"' });
    expect(found('defect', 'weld').fault).toMatchObject({ key: 'which', wanted: 'one of "crack", "dent"' });
    expect(found('space', 'bay', undefined, 'rework').fault).toMatchObject({
      key: 'which',
      wanted: 'no which: there is only one',
    });
    expect(found('person', 'welders', 'c').fault).toMatchObject({ key: 'site', seen: '"c"' });
    expect(found('place', 'jigs').fault).toMatchObject({ key: 'of', seen: '"jigs"', suggestion: 'jig' });
  });
  it('can be given for each of them, and no two share one', () => {
    const named = reliefsOf(base).map(
      ({ kind, of, which }) => findRelief(base, { kind, of: of.name, site: of.site, which }).relief?.text,
    );
    expect(named).toEqual(reliefsOf(base).map(({ text }) => text));
  });
  it('that does not exist is told at its key', () => {
    const text = yaml()
      .replace('of: jig, price: 1000', 'of: jog, price: 1000')
      .replace('which: rework', 'which: reworks');
    expect(
      readScenario(text, 'made.yaml', () => '').problems?.map(({ path, suggestion }) => [path, suggestion]),
    ).toEqual([
      ['costs.changes.jig more.of', 'jig'],
      ['costs.changes.rework shelf.which', undefined],
    ]);
  });
});
