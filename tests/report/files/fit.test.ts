import { describe, expect, it } from 'vitest';
import { readTimes } from '../../../src/records/table/clocked.js';
import { tableLines } from '../../../src/records/table/table.js';
import { fitFiles, fittedYaml } from '../../../src/report/files/fit.js';
import { fitTable } from '../../../src/report/terminal/records/fit.js';
import { workPaths } from '../../../src/scenario/changes/work-paths.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import { anyPlace } from '../../../src/study/fit/places.js';
import { fitResults } from '../../../src/study/fit/results.js';
import { fitStep } from '../../../src/study/fit/steps.js';

/** Quarter points of a gamma, made up: all that counts is that they can be fitted. */
const TIMES = [31, 35, 38, 40, 42, 44, 47, 52, 33, 36, 39, 41, 43, 45, 49, 55, 34, 37, 46, 50, 29.5, 61];
const found = (more: string, name = 'times.csv') => {
  const text = `step,minutes\n${TIMES.map((time) => `build,${time}\n`).join('')}hang,18\nhang,18\n${more}`;
  const read = readTimes(tableLines(new TextEncoder().encode(text)), {}, undefined),
    paths = new Map([
      ['build', 'route[build].work'],
      ['hang', 'feeders.doors.route[hang].work'],
    ]);
  return fitResults(
    read,
    read.steps.map((each) => {
      const path = paths.get(each.step) ?? null;
      return fitStep(each, '1', {
        ...anyPlace(each.step),
        ...{ path, notWritten: path === null ? 'not there' : null },
      });
    }),
    { table: name, tableDigest: 'none', scenarioFile: 'main.yaml', scenarioDigest: null, seed: '1' },
  );
};
const SCENARIO = `scenario: one
include: fitted.yaml
programme: { start: 2027-03-01, quantity: 4, rate: { per day: 1 } }
sites: { works: { crews: { fitters: 1 }, stations: { jig: {}, booth: {} } } }
feeders: { doors: { stock: 2, route: [{ step: hang, at: booth, work: 10 min }] } }
route: [{ step: build, at: jig, parts: { doors: 1 }, work: 1 h }]
`;
const included = (yaml: string) => readScenario(SCENARIO, 'main.yaml', () => yaml);

describe('what fit writes', () => {
  it('can be included: the scenario then has the distribution that was fitted, and says how many stand behind it', () => {
    const results = found(''),
      { scenario, problems } = included(fittedYaml(results));
    expect((problems ?? []).map(sayProblem)).toEqual([]);
    expect(scenario!.assumptions.map(({ path, measured }) => [path, measured?.n, measured?.file])).toEqual([
      ['route[0].work', 22, 'times.csv'],
      ['feeders.doors.route[0].work', 2, 'times.csv'],
    ]);
    const [step] = scenario!.route;
    expect('work' in step && step.work).toMatchObject({ kind: 'lognormal' });
    expect(fitTable(results, 100)).toContain('build');
  });

  it('finds the work of steps and of their passes, side by side and in feeders too', () => {
    expect([
      ...workPaths({
        route: [{ step: 'a', work: '1 h' }, { 'side by side': [{ step: 'b', work: '2 h' }, { step: 'c' }] }],
        feeders: {
          doors: {
            route: [
              { step: 'd', work: '1 h' },
              { step: 'e', passes: { count: 2, work: '9 min' } },
            ],
          },
        },
      }),
    ]).toEqual([
      ['a', { step: 'route[a]', work: 'route[a].work' }],
      ['b', { step: 'route[b]', work: 'route[b].work' }],
      ['c', { step: 'route[c]', work: null }],
      ['d', { step: 'feeders.doors.route[d]', work: 'feeders.doors.route[d].work' }],
      ['e', { step: 'feeders.doors.route[e]', work: 'feeders.doors.route[e].passes.work' }],
    ]);
  });

  it('does no harm with hostile names', async () => {
    const files = await fitFiles(
      found('"=HYPERLINK(""x"")",abc\n"<script>",5\n"a\nroute: []",6\n"\u202etxt",7\n', 'ti"mes\n: .csv'),
    );
    expect(files.get('left-out.csv')).toContain(`"'=HYPERLINK(""x"")"`);
    expect(
      String(files.get('fitted.yaml'))
        .split('\n')
        .filter((line) => /^route/.test(line)),
    ).toEqual([]);
    for (const [name, text] of files)
      if (/(json|yaml|csv|html)$/.test(name)) expect(String(text), name).not.toContain('\u202e');
    expect((included(String(files.get('fitted.yaml'))).problems ?? []).map(sayProblem)).toEqual([]);
  });
});
