import { describe, expect, it } from 'vitest';
import { crossFindings } from '../../../src/scenario/checks.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';

const lines = (count: number, line: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => line(i)).join('\n');
const stations = (count: number, text = '{ buffer: 2, rework buffer: 2 }'): string =>
  lines(count, (i) => `      s${i}: ${text}`);

/** Sections, stations, and what a step has besides work. */
type Shape = (count: number) => {
  readonly sections?: string;
  readonly places?: string;
  readonly step: (i: number) => string;
};
/** Each took the square of the number of its steps, or more, before. */
const SHAPES: Readonly<Record<string, Shape>> = {
  'steps with a crew': () => ({ step: () => ', crew: { c: 1 }' }),
  'tests that send back one step': () => ({
    step: (i) => `, fails: { chance: 1 %, back to: t${Math.max(0, i - 1)} }`,
  }),
  'tests that send back to the first': () => ({ step: () => ', fails: { chance: 1 %, back to: t0 }' }),
  'holds after tests': () => ({
    step: (i) => (i % 2 === 0 ? ', fails: { chance: 1 %, carry: 1 min }' : ', hold: true'),
  }),
  'second measurements': () => ({
    step: (i) => `, fails: { chance: 1 %, repair: 1 min }${i % 2 === 0 ? '' : `, compares with: t${i - 1}`}`,
  }),
  'defects made and found': (count) => ({
    sections: `defects:\n${lines(count, (i) => `  d${i}: {}`)}`,
    step: (i) => `, creates: { d${i}: 1 % }, finds: { d${i}: { chance: 50 %, back to: t${i} } }`,
  }),
  'pulse lines': (count) => ({
    sections: `pulse lines:\n${lines(count, (i) => `  p${i}: { takt: 1 h, stations: [s${i}] }`)}`,
    places: stations(count, '{}'),
    step: () => '',
  }),
  'feeders with a defect each': (count) => ({
    sections:
      `defects:\n${lines(count, (i) => `  d${i}: {}`)}\nfeeders:\n` +
      lines(
        count,
        (i) =>
          `  f${i}: { stock: 2, route: [{ step: b${i}, at: s${i}, work: 1 h, creates: { d${i}: 1 % } }] }`,
      ),
    step: (i) => `, parts: { f${i}: 1 }, finds: { d${i}: { chance: 50 %, repair: 1 min } }`,
  }),
  'rework only': () => ({
    step: (i) =>
      i % 2 === 0
        ? `, fails: { chance: 1 %, back to: t${i} }`
        : ', fails: { chance: 1 %, back to: t0 }, rework: only',
  }),
};

function scenarioOf(shape: Shape, count: number): Scenario {
  const { sections = '', places = stations(count), step } = shape(count);
  const yaml = `scenario: Many
programme: { start: 2027-03-01, quantity: 5, rate: { per day: 1 } }
${sections}
sites:
  hall:
    crews: { c: 5 }
    stations:
${places}
route:
${lines(count, (i) => `  - { step: t${i}, at: s${i}, work: 1 min${step(i)} }`)}
  - { step: last, at: s${count - 1}, work: 1 min }
`;
  const { scenario, problems } = readScenario(yaml, 'many.yaml', () => '');
  expect(problems ?? []).toEqual([]);
  return scenario!;
}

/** Calls `use` with a scenario that is the same, and counts how often anything is read of its steps. */
function readsOf(scenario: Scenario, use: (scenario: Scenario) => void): number {
  let reads = 0;
  const watched = <Thing extends object>(thing: Thing): Thing =>
    new Proxy(thing, {
      get: (target, key) => {
        reads++;
        return Reflect.get(target, key) as unknown;
      },
    });
  use({
    ...scenario,
    route: scenario.route.map(watched),
    feeders: Object.fromEntries(
      Object.entries(scenario.feeders).map(([name, feeder]) => [
        name,
        { ...feeder, route: feeder.route.map(watched) },
      ]),
    ),
  });
  return reads;
}

describe('of a scenario four times as large no more than five times as much is looked at', () => {
  it.each(Object.entries(SHAPES))('%s', (_, shape) => {
    const small = scenarioOf(shape, 60),
      large = scenarioOf(shape, 240);
    for (const use of [
      (scenario: Scenario) => void crossFindings(scenario, true),
      (scenario: Scenario) => void compile(scenario),
    ])
      expect(readsOf(large, use)).toBeLessThan(5 * readsOf(small, use));
  });
});
