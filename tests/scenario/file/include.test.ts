import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import { fixture, SECTIONS } from '../read-small.js';

type Files = Readonly<Record<string, string>>;
const read = (main: string, files: Files = {}, file = 'dir/main.yaml') =>
  readScenario(main, file, (path) => {
    if (!(path in files)) throw new Error('no such file');
    return files[path];
  });
const saidOf = (main: string, files: Files = {}): string[] =>
  (read(main, files).problems ?? []).map(sayProblem);
function whole(main: string, files: Files) {
  const { scenario, problems } = read(main, files);
  expect((problems ?? []).map(sayProblem)).toEqual([]);
  return scenario!;
}

const programme = 'programme: { start: 2027-03-01, quantity: 4, rate: { per day: 1 } }\n';
const main = `scenario: one
${programme}sites: { works: { crews: { fitters: 1 }, stations: { jig: {} } } }
include: [paint.yaml]
route:
  - { step: build, at: jig, work: 1 h }
  - include: paint.yaml
  - { step: fit, at: jig, crew: { fitters: 1 }, work: 1 h }
`;
const paint = `sites: { works: { crews: { painters: 2 }, stations: { booth: {} } } }
defects: { runs: {} }
route:
  - { step: paint, at: booth, crew: { painters: 2 }, work: 30 min, creates: { runs: 1 % } }
  - { step: look, at: booth, work: 5 min, finds: { runs: { chance: 50 %, back to: paint } } }
`;

describe('a scenario in several files', () => {
  it('is the same as in one: sections name by name, sites with crews and stations, the route in its place', () => {
    const one = `scenario: one\n${programme}sites: { works: { crews: { fitters: 1, painters: 2 }, stations: { jig: {}, booth: {} } } }
route:
  - { step: build, at: jig, work: 1 h }
  - { step: paint, at: booth, crew: { painters: 2 }, work: 30 min, creates: { runs: 1 % } }
  - { step: look, at: booth, work: 5 min, finds: { runs: { chance: 50 %, back to: paint } } }
  - { step: fit, at: jig, crew: { fitters: 1 }, work: 1 h }
defects: { runs: {} }
`;
    expect(whole(main, { 'paint.yaml': paint })).toEqual(whole(one, {}));
  });

  it('can have each section of a full scenario in a file of its own', () => {
    const text = fixture('full.yaml');
    const sections = text
      .split(/^(?=[a-z])/m)
      .filter((section) => /^(?:calendars|sites|lanes|defects|feeders):/.test(section));
    expect(sections.length).toBe(5);
    const files = Object.fromEntries(
      sections.map((section) => [`${/^[a-z]+/.exec(section)![0]}.yaml`, section]),
    );
    const rest = sections.reduce((left, section) => left.replace(section, ''), text);
    const { scenario, problems } = readScenario(
      `${rest}\ninclude: [${Object.keys(files).join(', ')}]\n`,
      'full.yaml',
      (path) => files[path] ?? fixture(path),
    );
    expect(problems).toBeUndefined();
    expect(digest(scenario!)).toBe(digest(readScenario(text, 'full.yaml', fixture).scenario!));
  });

  it('can be a few lines about a whole one, which has its name and its note and may be added to', () => {
    const costs =
        'costs: { currency: EUR, people: { fitters: 40 }, changes: { more: { relief: place, of: jig } } }\n',
      line = `note: of the whole\n${main}${costs}`,
      files = { 'line.yaml': line, 'paint.yaml': paint };
    const plan = (...more: string[]): string => ['include: line.yaml', ...more].join('\n');
    const same = whole(plan(), files);
    expect([same.name, same.note]).toEqual(['one', 'of the whole']);
    expect(digest(same)).toBe(digest(whole(line, files)));
    expect(whole(plan('note: of the plan'), files).note).toBe('of the plan');
    const made = whole(
      plan('costs: { people: { painters: 50 }, changes: { more: { price: 5, made: yes } } }'),
      files,
    );
    expect(made.sites['works'].stations['jig'].places).toBe(2);
    expect(Object.keys(made.costs!.people)).toEqual(['painters', 'fitters']);
    expect(saidOf(plan('costs: { changes: { more: { of: booth } } }'), files)).toEqual([
      expect.stringMatching(
        /^dir\/line\.yaml:\d+:\d+ costs\.changes\.more\.of: each name once over all files; got "of" again/,
      ),
    ]);
  });

  it('has another digest when an included file changes', () => {
    const of = (text: string): string => digest(whole(main, { 'paint.yaml': text }));
    expect(of(paint)).toBe(of(`# a remark\n${paint}`));
    expect(of(paint)).not.toBe(of(paint.replace('30 min', '31 min')));
  });

  it('takes paths from the file that names them: files in folders, and observed times', () => {
    const files = {
      'plants/paint.yaml': paint
        .replace('30 min', '{ observed: times/booth.csv, column: min, unit: min }')
        .replace('sites:', 'include: ../common/none.yaml\nsites:'),
      'common/none.yaml': 'lanes: {}\n',
      'plants/times/booth.csv': 'min\n7\n8\n',
    };
    expect(whole(main.replaceAll('paint.yaml', 'plants/paint.yaml'), files).route[1]).toMatchObject({
      name: 'paint',
      work: { kind: 'empirical', values: [7, 8] },
    });
  });

  it('may include a route in that of a feeder, and parts in parts', () => {
    const text = main
      .replace('include: [paint.yaml]', 'feeders: { axles: { stock: 2, route: [{ include: axle.yaml }] } }')
      .replace('fitters: 1 }, work', 'fitters: 1 }, parts: { axles: 1 }, work');
    const scenario = whole(text, {
      'paint.yaml': `${paint}  - include: more.yaml\n`,
      'more.yaml': 'route: [{ step: polish, at: booth, work: 1 min }]',
      'axle.yaml':
        'sites: { works: { stations: { bench: {} } } }\nroute: [{ step: weld, at: bench, work: 1 h }]',
    });
    expect(scenario.route.map((entry) => (entry.kind === 'step' ? entry.name : ''))).toEqual([
      'build',
      'paint',
      'look',
      'polish',
      'fit',
    ]);
    expect(scenario.feeders['axles'].route).toMatchObject([{ name: 'weld' }]);
  });

  it('lists what is said of values with the paths of the whole; what a file says at its top holds for that file', () => {
    const { assumptions } = whole(main, {
      'paint.yaml': `basis: guess\n${paint.replace('5 min', '{ value: 5 min, basis: measured }')}`,
    });
    expect(assumptions.map(({ path, basis }) => `${path} ${basis}`)).toEqual([
      'sites.works.crews.painters guess',
      'route[1].crew.painters guess',
      'route[1].work guess',
      'route[1].creates.runs guess',
      'route[2].work measured',
      'route[2].finds.runs.chance guess',
    ]);
  });
});

describe('problems in several files', () => {
  it('name the file in which they stand, with its line and the path there', () => {
    expect(
      saidOf(main.replace('at: jig, work', 'at: jigg, work'), {
        'paint.yaml': paint
          .replace('work: 30 min', 'work: 30')
          .replace('at: booth, work: 5', 'at: boot, work: 5'),
      }),
    ).toEqual([
      'dir/main.yaml:6:24 route[0].at: no station of this name; got "jigg"; did you mean "jig"?',
      'dir/paint.yaml:4:60 route[0].work: a time with its unit (s, min, h, days), such as "30 min"; got 30',
      'dir/paint.yaml:5:23 route[1].at: no station of this name; got "boot"; did you mean "booth"?',
    ]);
  });

  it.each<[what: string, text: string, expected: string]>([
    [
      'a name in both',
      paint.replace('booth: {}', 'booth: {}, jig: {}'),
      'dir/paint.yaml:1:66 sites.works.stations.jig: each name once over all files; got "jig" again, first at dir/main.yaml:3',
    ],
    [
      'a crew in both',
      paint.replace('painters: 2 },', 'painters: 2, fitters: 2 },'),
      'dir/paint.yaml:1:41 sites.works.crews.fitters: each name once over all files; got "fitters" again, first at dir/main.yaml:3',
    ],
    [
      'a step in both',
      paint.replace('step: look', 'step: build'),
      'dir/paint.yaml:5:13 route[1].step: each step name once over all routes; got "build" again, first at route[0] (dir/main.yaml:6)',
    ],
    [
      'a station at another site',
      paint.replace('works: {', 'yard: { stations: { jig: {} } }, works: {'),
      'dir/paint.yaml:1:30 sites.yard.stations.jig: each station name once over all sites; got "jig" again, first in site works (dir/main.yaml:3)',
    ],
    [
      'a second name of the scenario',
      `scenario: two\n${paint}`,
      'dir/paint.yaml:1:1 scenario: each name once over all files; got "scenario" again, first at dir/main.yaml:1',
    ],
    [
      'an unknown section',
      `crews: {}\n${paint}`,
      `dir/paint.yaml:1:1 crews: one of the keys ${SECTIONS}; got "crews"`,
    ],
    [
      'broken YAML',
      `${paint}  - {`,
      'dir/paint.yaml:6:6 valid YAML: flow map in block collection must be sufficiently indented and end with a }',
    ],
    [
      'a list',
      '- { step: paint, at: jig }',
      'dir/paint.yaml:1:1 a map with parts of a scenario, such as sites or route; got a list',
    ],
    ['an empty file', '', 'dir/paint.yaml:1:1 a scenario; got an empty file'],
    [
      'a key twice',
      paint.replace('defects:', 'defects: {}\ndefects:'),
      'dir/paint.yaml:3:1 defects: each key once in a map; got "defects" again',
    ],
    [
      'no route where one is wanted',
      'defects: { runs: {} }',
      'dir/main.yaml:7:14 route[1].include: a file with a route; got "paint.yaml", which has none',
    ],
    [
      'itself',
      `include: main.yaml\n${paint}`,
      'dir/paint.yaml:1:10 include: no file that includes itself; got main.yaml, which includes paint.yaml, which includes main.yaml',
    ],
  ])('an included file with %s', (_, text, expected) => {
    expect(saidOf(main, { 'paint.yaml': text })).toContain(expected);
  });

  it.each<[what: string, before: string, after: string, expected: string]>([
    [
      'a missing file',
      '[paint.yaml]',
      '[paint.yaml, pain.yaml]',
      'dir/main.yaml:4:23 include[1]: a YAML file that can be read, path relative to the file that names it (no such file); got "pain.yaml"',
    ],
    [
      'no name',
      '[paint.yaml]',
      '[3]',
      'dir/main.yaml:4:11 include[0]: the name of a file, or a list of them, such as [paint.yaml, final-plant.yaml]; got 3',
    ],
    [
      'nothing',
      '[paint.yaml]',
      '[]',
      'dir/main.yaml:4:10 include: the name of a file, or a list of them, such as [paint.yaml, final-plant.yaml]; got an empty list',
    ],
    [
      'an entry that says more',
      '- include: paint.yaml',
      '- { include: paint.yaml, when: x }',
      'dir/main.yaml:7:28 route[1].when: nothing beside include in an entry of a route; got "when"',
    ],
    [
      'a file in two places',
      '- include: paint.yaml',
      '- include: paint.yaml\n  - include: paint.yaml',
      'dir/main.yaml:8:14 route[2].include: the route of a file in one place; got "paint.yaml" again',
    ],
    [
      'two routes',
      '  - include: paint.yaml\n',
      '',
      'dir/paint.yaml:3:1 route: one route, with an entry - include: FILE where a part of it stands; got "route" again, first at dir/main.yaml:5',
    ],
  ])('an include of %s', (_, before, after, expected) => {
    expect(saidOf(main.replace(before, after), { 'paint.yaml': paint })).toContain(expected);
  });

  it('of files without end: deeper than eight', () => {
    const { problems } = readScenario(
      'include: a1.yaml',
      'main.yaml',
      (path) => `include: a${Number(path.slice(1, -5)) + 1}.yaml`,
    );
    expect(problems!.map(sayProblem)).toEqual([
      'a8.yaml:1:10 include: files included at most 8 deep; got a deeper one',
    ]);
  });

  it('are no false alarm about what another file has', () => {
    expect(
      saidOf(main, { 'paint.yaml': paint.replace('painters: 2 }, stations', 'painters: 2 }, statons') }),
    ).toEqual([
      'dir/paint.yaml:1:43 sites.works.statons: one of the keys zone, calendar, crews, equipment, stations; got "statons"; did you mean "stations"?',
    ]);
  });
});
