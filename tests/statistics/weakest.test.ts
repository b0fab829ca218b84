import { expect, it } from 'vitest';
import { scenarioData } from '../../src/scenario/read.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import { toVary } from '../../src/scenario/vary.js';
import { BUILDS } from '../study/constraint/builds.js';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';

const REPLICATIONS = 2;
/** Whole builds that take less than this share longer or shorter are not told apart. */
const MATTERS = 0.01;

/** Mean days to the last unit, of the build as a whole; endless where one was not shipped. */
function days(scenario: Scenario): number {
  const plan = built.prepare(built.compile(scenario)),
    ends = Array.from({ length: REPLICATIONS }, (_, r) => {
      const { shippedAt } = built.observe(built.simulate(plan, '1', r + 1), r + 1);
      return shippedAt.some(Number.isNaN) ? Infinity : Math.max(...shippedAt) / 1440;
    });
  return ends.reduce((sum, end) => sum + end, 0) / REPLICATIONS;
}

// Some twenty values a build, all of them guesses, four of which are tried. Which is the one that matters most is
// found by running every end of every one.
it(
  'the guess that a build hangs on most is among the four tried, or one nearly as good, in builds of every kind',
  SLOW,
  async () => {
    const missed: string[] = [];
    for (const { bound, yaml } of BUILDS) {
      const text = yaml.replace(/^scenario:.*$/m, (line) => `${line}\nbasis: guess`),
        scenario = scenarioBuilt(text),
        data = scenarioData(text, 'check.yaml', () => ''),
        asItIs = days(scenario);
      const { assumptions, vary } = toVary(scenario, data),
        all = assumptions
          .filter(({ at: [section] }) => section !== 'programme')
          .map((assumption) => {
            const { low, high } = vary(assumption),
              moved = [low, high].map((end) =>
                end === undefined ? 0 : Math.abs(days(end.scenario) - asItIs) / asItIs,
              );
            return { path: assumption.path, moved: Math.max(...moved) };
          })
          .sort((a, b) => b.moved - a.moved);
      const [most] = all;
      const { weakest } = await built.simulateStudy({
        ...{ scenario, data, file: 'check.yaml', replications: REPLICATIONS, seed: '1', workers: 1 },
      });
      const tried = all.filter(({ path }) => weakest!.tried.some((guess) => guess.path === path));
      const best = Math.max(...tried.map(({ moved }) => moved));
      if (most.moved > MATTERS && best < 0.8 * most.moved)
        missed.push(
          `${bound}: ${most.path} ${most.moved.toFixed(3)}, not ${tried[0].path} ${best.toFixed(3)}`,
        );
    }
    expect(missed).toEqual([]);
  },
);
