import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';

type Files = Readonly<Record<string, string>>;
const reader = (files: Files) => (path: string) => {
  if (!(path in files)) throw new Error('no such file');
  return files[path];
};
const saidOf = (main: string, files: Files = {}): string[] =>
  (readScenario(main, 'main.yaml', reader(files)).problems ?? []).map(sayProblem);
function read(main: string, files: Files = {}) {
  const { scenario, problems } = readScenario(main, 'main.yaml', reader(files));
  expect((problems ?? []).map(sayProblem)).toEqual([]);
  return scenario!;
}

const main = (work = '{ value: 30 min, basis: guess }', include = '') => `scenario: one
programme: { start: 2027-03-01, quantity: 4, rate: { per day: 1 } }
${include}sites: { works: { crews: { fitters: { headcount: 1, basis: estimate } }, stations: { jig: {}, booth: {} } } }
feeders: { doors: { stock: 2, route: [{ step: hang, at: booth, work: 10 min }] } }
route:
  - { step: build, at: jig, parts: { doors: 1 }, work: 1 h }
  - { step: coat 1.5, at: booth, work: ${work} }
`;
const fitted = `measured:
  route.coat 1.5.work: { mean: 42 min, cv: 0.31, basis: { measured: 84, file: times.csv } }
  feeders.doors.route.hang.work: 12 min
`;

describe('values that were measured', () => {
  it('stand in place of the others, in the file itself and from one it includes', () => {
    const byHand = main('{ mean: 42 min, cv: 0.31 }').replace('work: 10 min', 'work: 12 min');
    expect(digest(read(main() + fitted))).toBe(digest(read(byHand)));
    expect(digest(read(main(undefined, 'include: fitted.yaml\n'), { 'fitted.yaml': fitted }))).toBe(
      digest(read(byHand)),
    );
    expect(digest(read(main()))).not.toBe(digest(read(byHand)));
  });

  it('may be a work factor that the scenario does not have, whole or of one more option', () => {
    const options = main().replace(
        'rate: { per day: 1 }',
        'rate: { per day: 1 }, options: { cab: 30 %, bands: 20 % }',
      ),
      by = (factor: string) => options.replace('work: 1 h }', `work: 1 h, work factor: ${factor} }`);
    const both = '{ cab: { yes: 1.3 }, bands: { yes: 1.1 } }';
    expect(digest(read(`${options}measured: { route.build.work factor: ${both} }\n`))).toBe(
      digest(read(by(both))),
    );
    expect(
      digest(
        read(`${by('{ cab: { yes: 1.3 } }')}measured: { route.build.work factor.bands: { yes: 1.1 } }\n`),
      ),
    ).toBe(digest(read(by(both))));
    expect(saidOf(`${options}measured: { route.build.work facter: ${both} }\n`)[0]).toContain(
      'a value that the scenario gives, in route[0]',
    );
    expect(saidOf(`${options}measured: { route.build.work factor: { cab: { yse: 1.3 } } }\n`)[0]).toContain(
      'yse',
    );
  });

  it('reach into the route of a file that stands in the place of an entry', () => {
    const files = { 'paint.yaml': 'route:\n  - { step: paint, at: booth, work: 20 min }\n' },
      whole = (minutes: number, more = '') =>
        `${main()}  - { step: paint, at: booth, work: ${minutes} min }\n${more}`;
    expect(
      digest(read(`${main()}  - include: paint.yaml\nmeasured: { "route[paint].work": 25 min }\n`, files)),
    ).toBe(digest(read(whole(25))));
  });

  it('bring what is said of them along, and take what was said of the others away', () => {
    const said = (text: string) =>
      read(text).assumptions.map(({ path, basis, value, measured }) => [path, basis, value, measured?.n]);
    expect(said(main())).toEqual([
      ['sites.works.crews.fitters.headcount', 'estimate', '1', undefined],
      ['route[1].work', 'guess', '30 min', undefined],
    ]);
    expect(said(main() + fitted)).toEqual([
      ['sites.works.crews.fitters.headcount', 'estimate', '1', undefined],
      ['route[1].work', 'measured', expect.stringContaining('42 min'), 84],
      ['feeders.doors.route[0].work', 'measured', '12 min', undefined],
    ]);
    expect(
      said(`${main()}measured: { route.coat 1.5.work: { value: 9 min, basis: estimate } }\n`)[1],
    ).toEqual(['route[1].work', 'estimate', '9 min', undefined]);
    // A part of a map of which something is said: what is said stays, of the map as it is now.
    const part = `${main('{ mean: 30 min, cv: 0.2, basis: guess }')}measured: { route.coat 1.5.work.mean: 33 min }\n`;
    expect(said(part)[1][2]).toContain('33 min');
  });

  it('are told by path, line and what may be meant where a path leads nowhere', () => {
    const at = (key: string, value = '5 min') => saidOf(`${main()}measured:\n  ${key}: ${value}\n`);
    expect(at('route.biuld.work')).toEqual([
      'main.yaml:9:3 measured.route.biuld.work: an entry of route, by the name of its step or by its number ' +
        'from 0; got "biuld"; did you mean "build"?',
    ]);
    expect(at('route.build.wrok')).toEqual([
      'main.yaml:9:3 measured.route.build.wrok: a value that the scenario gives, in route[0]; got "wrok"; ' +
        'did you mean "work"?',
    ]);
    expect(at('route.build.work.mean')[0]).toContain(
      'main.yaml:9:3 measured.route.build.work.mean: a path that',
    );
    expect(saidOf(`${main()}measured: [1]\n`)).toEqual([
      expect.stringContaining('main.yaml:8:11 measured: a map of paths with the values to stand there'),
    ]);
  });

  it('are told at the line of the section where a value is wrong, also in an included file', () => {
    const files = { 'fitted.yaml': '\nmeasured:\n  route.build.work: { mean: 42 min, cvv: 0.31 }\n' };
    expect(saidOf(main(undefined, 'include: fitted.yaml\n'), files)).toEqual([
      expect.stringMatching(/^fitted\.yaml:3:37 measured\.route\.build\.work\.cvv: .*did you mean "cv"\?$/),
    ]);
    expect(saidOf(`${main()}measured:\n  route.build.work:\n`)).toEqual([
      expect.stringContaining('main.yaml:9:20 measured.route.build.work: a time, such as '),
    ]);
  });

  it('are given once: no name twice over files, no two paths to one value or a part of it', () => {
    expect(
      saidOf(main(undefined, 'include: [a.yaml, b.yaml]\n'), {
        'a.yaml': 'measured: { route.build.work: 5 min }\n',
        'b.yaml': 'measured: { route.build.work: 6 min }\n',
      }),
    ).toEqual([
      'b.yaml:1:13 measured.route.build.work: each name once over all files; got "route.build.work" again, ' +
        'first at a.yaml:1',
    ]);
    expect(saidOf(`${main()}measured:\n  route.build.work: 5 min\n  route[0].work: 6 min\n`)).toEqual([
      'main.yaml:10:3 measured.route[0].work: each value measured once; another path leads to it or to a ' +
        'part of it; got "route[0].work"',
    ]);
  });

  it('are there before what-ifs, which change them further', () => {
    const text = `${main()}measured: { route.build.work: 5 min }\n`,
      { whatIfs, problems } = readWhatIfs(
        'slower: { changes: [{ route.build.work: 6 min }] }\n',
        'ideas.yaml',
        { text, file: 'main.yaml' },
        reader({}),
      );
    expect(problems).toBeUndefined();
    expect(whatIfs![0].changes[0]).toMatchObject({ path: 'route[0].work', before: '5 min', after: '6 min' });
  });
});
