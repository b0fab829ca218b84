import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import { prepare } from '../../src/flow/plan.js';
import { observe } from '../../src/measure/observe.js';
import { assumptionLine } from '../../src/report/tables/assumptions.js';
import { compile } from '../../src/scenario/compile.js';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { readScenario } from '../../src/scenario/read.js';

const folder = new URL('../../scenarios/rules/', import.meta.url);

function scenarioOf(file: string) {
  const { scenario, problems } = readScenario(readFileSync(new URL(file, folder), 'utf8'), file, (path) =>
    readFileSync(new URL(path, folder), 'utf8'),
  );
  expect((problems ?? []).map(sayProblem)).toEqual([]);
  return scenario!;
}
const shippedAt = (file: string) => [
  ...observe(simulate(prepare(compile(scenarioOf(file))), 'rules', 1), 1).shippedAt,
];

describe('00-assumptions.yaml', () => {
  it('lists the values of which something is said, and no other', () => {
    const { assumptions } = scenarioOf('00-assumptions.yaml');
    expect(assumptionLine(assumptions)).toEqual(['assumptions: 3 measured, 3 estimated, 4 guessed']);
    expect(assumptions.map(({ path, basis }) => `${path} ${basis}`)).toEqual([
      'programme.quantity measured',
      'programme.rate.per day estimate',
      'sites.works.crews.painters.headcount guess',
      'sites.works.stations.booth.places measured',
      'route[0].crew.painters guess',
      'route[0].passes.count guess',
      'route[0].passes.work estimate',
      'route[0].passes.settle guess',
      'route[1].work estimate',
      'route[1].learning.rate measured',
    ]);
  });

  it('runs as if nothing were said: two a day, at 06:00 and 10:00, each out after 2 x (25 + 5) + 30 min', () => {
    const days = [0, 1440].flatMap((day) => [day + 360 + 90, day + 600 + 90]);
    expect(shippedAt('00-assumptions.yaml')).toEqual(days);
  });
});

describe('00-include.yaml', () => {
  it('is one scenario: the stations of both files, the steps of the part between those of the main file', () => {
    const { sites, route, calendars, note } = scenarioOf('00-include.yaml');
    expect(Object.keys(sites['works'].stations)).toEqual(['jig', 'fitting bay', 'booth', 'drying bay']);
    expect(route.map((entry) => (entry.kind === 'step' ? entry.name : entry.lane))).toEqual([
      'build',
      'paint',
      'dry',
      'fit',
    ]);
    expect(Object.keys(calendars)).toEqual(['days']);
    expect(note).toBeUndefined();
  });

  it('ships each unit 230 or 240 min after 06:00 of its day, both of them at times', () => {
    const minutes = shippedAt('00-include.yaml').map((at) => (at % 1440) - 360);
    expect(minutes).toHaveLength(20);
    expect(new Set(minutes)).toEqual(new Set([230, 240]));
  });
});
