import { describe, expect, it } from 'vitest';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { readWhatIfs } from '../../src/scenario/what-ifs.js';
import { fixture } from './read-small.js';

const BASE = fixture('small.yaml');
const read = (text: string, base = BASE, files: Record<string, string | undefined> = {}) =>
  readWhatIfs(text, 'what-ifs.yaml', { text: base, file: 'small.yaml' }, (path) => {
    const content = files[path];
    if (content === undefined) throw new Error('no such file');
    return content;
  });
/** Problems without the name of the file. */
const said = (text: string): string[] =>
  (read(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^what-ifs\.yaml:/, ''));
const only = (text: string) => {
  const { whatIfs, problems } = read(text);
  expect(problems).toBeUndefined();
  expect(whatIfs).toHaveLength(1);
  return whatIfs![0];
};

describe('a what-if', () => {
  it('is the scenario with its changes and nothing else, told with the values before and after', () => {
    const { name, note, changes, scenario } = only(
      'second booth:\n  note: invented\n  changes:\n    - sites.coachworks.stations.booth.places: 2\n    - sites.coachworks.crews.painters: 7\n',
    );
    expect({ name, note }).toEqual({ name: 'second booth', note: 'invented' });
    expect(changes).toEqual([
      {
        path: 'sites.coachworks.stations.booth.places',
        words: 'the number of places at booth',
        before: null,
        after: '2',
      },
      { path: 'sites.coachworks.crews.painters', words: 'the number of painters', before: '6', after: '7' },
    ]);
    const { stations } = scenario.sites['coachworks'];
    expect(stations['booth']).toMatchObject({ places: 2, buffer: 2 });
    expect(stations['oven'].places).toBe(4);
  });

  it.each(['route[0].work', 'route[prime].work', 'route.prime.work'])(
    'reaches a step by number or name: %s',
    (path) => {
      expect(only(`quick: { changes: { "${path}": 30 min } }`).changes).toEqual([
        {
          path: 'route[0].work',
          words: 'the work of prime',
          before: '{ low: 35 min, likely: 42 min, high: 60 min }',
          after: '30 min',
        },
      ]);
    },
  );

  it('reaches into feeders, names with spaces, and part of a value', () => {
    const { changes } = only(
      'one:\n  changes:\n    - feeders.axles.route[build axle].work: 30 min\n    - sites.final plant.crews.fitters.headcount: 5\n    - route[prime].work.likely: 40 min\n    - route[inspect].finds.runs.chance: 95 %\n',
    );
    expect(changes.map(({ path }) => path)).toEqual([
      'feeders.axles.route[0].work',
      'sites.final plant.crews.fitters.headcount',
      'route[0].work.likely',
      'route[2].finds.runs.chance',
    ]);
  });

  it('takes out a key, and adds one where its map is', () => {
    const { changes, scenario } = only(
      'one: { changes: [ remove: route.bands.in one shift, sites.coachworks.stations.bay.buffer: 3 ] }',
    );
    expect(changes).toEqual([
      {
        path: 'route[3].in one shift',
        words: 'whether bands is done in one shift',
        before: 'true',
        after: null,
      },
      {
        path: 'sites.coachworks.stations.bay.buffer',
        words: 'the waiting spaces ahead of bay',
        before: null,
        after: '3',
      },
    ]);
    expect(scenario.route[3]).toMatchObject({ oneShift: false });
  });

  it('sees a value that the scenario wraps with its basis, may say a basis itself, and reaches a step of an included file', () => {
    const base = BASE.replace('painters: 6', 'painters: { value: 6, basis: guess }').replace(
      '  - lane: ferry\n',
      '  - include: ferry.yaml\n',
    );
    const { whatIfs, problems } = read(
      'one: { changes: [ sites.coachworks.crews.painters: { value: 7, basis: guess }, route.wait.work: 2 h ] }',
      base,
      { 'ferry.yaml': 'route: [{ step: wait, at: bay, work: 1 h }, { lane: ferry }]' },
    );
    expect(problems).toBeUndefined();
    expect(whatIfs![0].changes.map(({ before, after }) => [before, after])).toEqual([
      ['6', '7'],
      ['1 h', '2 h'],
    ]);
  });

  it('leaves the next one alone', () => {
    const { whatIfs } = read(
      'a: { changes: { sites.coachworks.crews.painters: 7 } }\nb: { changes: { sites.coachworks.stations.booth.places: 2 } }',
    );
    expect(whatIfs![1].scenario.sites['coachworks'].crews['painters']).toEqual(
      read('c: { changes: { route.prime.work: 1 h } }').whatIfs![0].scenario.sites['coachworks'].crews[
        'painters'
      ],
    );
  });
});

describe('what is wrong in a file of what-ifs is told at its line', () => {
  const keys = 'changes: a list of path: new value, such as - sites.hall.stations.bench.places: 2';
  it.each<[title: string, text: string, expected: string]>([
    [
      'a misspelt name on the way',
      'a:\n  changes:\n    - sites.coachwork.stations.booth.places: 2',
      '3:7 a: sites.coachwork.stations.booth.places: a key or name in sites; got "coachwork"; did you mean "coachworks"?',
    ],
    [
      'a misspelt step',
      'a: { changes: { route.prim.work: 1 h } }',
      '1:17 a: route.prim.work: an entry of route, by the name of its step or by its number from 0; got "prim"; did you mean "prime"?',
    ],
    [
      'a number beyond the route',
      'a: { changes: { "route[12].work": 1 h } }',
      '1:17 a: route[12].work: an entry of route, by the name of its step or by its number from 0; got "12"',
    ],
    [
      'a path through a value',
      'a: { changes: { route.prime.work.low.x: 1 h } }',
      '1:17 a: route.prime.work.low.x: a path that ends with route[0].work.low, which is no map; got "x"',
    ],
    [
      'words behind a bracket',
      'a: { changes: { "route[prime]work": 1 h } }',
      '1:17 a: route[prime]work: a dot and a key behind the bracket; got "work"',
    ],
    [
      'a reserved name',
      'a: { changes: { sites.coachworks.__proto__: 1 } }',
      '1:17 a: sites.coachworks.__proto__: another name, this one is reserved; got "__proto__"',
    ],
    [
      'a value of the wrong kind',
      'a:\n  changes:\n    - route.prime.work: 30',
      '3:25 a: route[0].work: a time with its unit (s, min, h, days), such as "30 min"; got 30',
    ],
    [
      'a reference to nothing',
      'a: { changes: { route.prime.at: booht } }',
      '1:33 a: route[0].at: no station of this name; got "booht"; did you mean "booth"?',
    ],
    [
      'a fault inside a new map',
      'a:\n  changes:\n    - route.prime.work:\n        low: 5 min\n        high: x',
      '5:15 a: route[0].work.high: a time, such as "20 min"; units are s, min, h, days; got "x"',
    ],
    [
      'changes that another line of the scenario does not go with',
      'a: { changes: { sites.coachworks.crews.painters: 1 } }',
      '1:1 a: route[0].crew.painters: at most 1, the headcount of painters in site coachworks (small.yaml:33); got 2',
    ],
    [
      'a removal of what is not there',
      'a: { changes: { remove: route.prime.wrk } }',
      '1:25 a: route.prime.wrk: a key that is there; got "wrk"; did you mean "work"?',
    ],
    [
      'a removal of a step',
      'a: { changes: { remove: route.prime } }',
      '1:25 a: route.prime: a key of a map; entries of a list stay, give the whole list anew; got 0',
    ],
    [
      'a removal of a path with a line break',
      'a: { changes: { remove: "route\\nx" } }',
      '1:25 a: the path of a key to take out; got "route\\nx"',
    ],
    ['a removal of no path', 'a: { changes: { remove: 3 } }', '1:25 a: the path of a key to take out; got 3'],
    [
      'one value changed twice',
      'a: { changes: [ route.prime.work: 1 h, "route[0].work.low": 2 h ] }',
      '1:40 a: route[0].work.low: a path that ends with route[0].work, which is no map; got "low"',
    ],
    [
      'a part of a value changed again',
      'a: { changes: [ route.prime.work.low: 30 min, route.prime.work: 2 h ] }',
      '1:47 a: route.prime.work: each value changed once; another change of this what-if has it, or a part of it, already',
    ],
    [
      'another start',
      'a: { changes: { programme.start: 2027-03-08 } }',
      '1:1 a: start, zone, length and warm up of the programme as in the scenario, so that weeks can be compared',
    ],
    [
      'no change at all',
      'a: { changes: { sites.coachworks.stations.booth.buffer: 2 } }',
      '1:1 a: changes that change something; got the same as the scenario itself',
    ],
    [
      'the same twice',
      'a: { changes: { route.prime.work: 1 h } }\nb: { changes: { route.prime.work: 60 min } }',
      '2:1 b: changes that change something; got the same as "a"',
    ],
    [
      'the name base',
      'base: { changes: { route.prime.work: 1 h } }',
      '1:1 base: another name; this one means the scenario itself',
    ],
    ['no changes', 'a: { note: x }', `1:1 a: ${keys}`],
    [
      'changes as a text',
      'a: { changes: [ faster ] }',
      '1:17 a: path: new value, remove: path or scale: { spread: 1.5 }; got "faster"',
    ],
    [
      'another key',
      'a: { changes: { route.prime.work: 1 h }, nota: x }',
      '1:42 a: changes and note; got "nota"; did you mean "note"?',
    ],
    ['no map', '[a, b]', `1:1 a map of 1 to 50 what-ifs, each a name with ${keys}; got a list`],
    [
      'no YAML',
      'a: { changes: [',
      '1:16 valid YAML: flow sequence in block collection must be sufficiently indented and end with a ]',
    ],
  ])('%s', (_, text, expected) => {
    expect(said(text)).toContain(expected);
  });

  it('and nothing is said of a sound file, whatever else stands in the others', () => {
    expect(
      said('a: { changes: { route.prime.work: 1 h } }\nb: { changes: { route.prime.wrok.low: 1 h } }'),
    ).toHaveLength(1);
  });
});
