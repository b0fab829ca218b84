import { describe, it } from 'vitest';
import type { Observation } from '../../src/measure/observe.js';
import { expectAgreement, SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { exactThroughput } from './exact-places.js';
import { exponential, type Line, lineYaml } from './line.js';

/** Half of it before a change and half after it; the warm-up of 1,000 h is part of the first half. */
const HALF_DAYS = 500,
  HOURS = 2 * HALF_DAYS * 24 - 1000;
/** Of 60 equal parts: those wholly before the change, and those after it when the line has settled again. */
const BEFORE = 27,
  AFTER = 31;

/** Units shipped an hour by replication, before and after. */
function shippedPerHour(before: Omit<Line, 'hours'>, after: Omit<Line, 'hours'>): [number[], number[]] {
  const [first, last] = [before, after].map((line) =>
      scenarioBuilt(
        lineYaml({ ...line, hours: HOURS }).replace('{ arrivals', '{ start: 2027-01-01, arrivals'),
      ),
    ),
    until = new Date(Date.UTC(2027, 0, 1 + HALF_DAYS)).toISOString().slice(0, 10),
    plan = built.prepare(built.compile({ ...last, before: [{ until, scenario: first }] }));
  const seen = Array.from({ length: 20 }, (_, r) =>
    built.observe(built.simulate(plan, 'statistics', r + 1), r + 1),
  );
  const rate = ({ shippedIn }: Observation, from: number, to: number): number =>
    shippedIn.slice(from, to).reduce((a, b) => a + b, 0) / ((HOURS / 60) * (to - from));
  return [seen.map((each) => rate(each, 0, BEFORE)), seen.map((each) => rate(each, AFTER, 60))];
}

/** Against the Markov chain of the line, which gives (q + 2)/(q + 3) for two stations (Hunt 1956). */
describe(
  'a saturated line of exponential stations that is changed on a date ships before and after',
  SLOW,
  () => {
    const work = [exponential(1), exponential(1)];
    const check = (
      before: Omit<Line, 'hours'>,
      after: Omit<Line, 'hours'>,
      expected: [number, number],
    ): void => {
      const [early, late] = shippedPerHour(before, after);
      expectAgreement(early, expected[0], 0.01);
      expectAgreement(late, expected[1], 0.01);
    };

    it('2/3 and 4/5 of a unit an hour where two spaces come', () => {
      check({ work, between: [0] }, { work, between: [2] }, [2 / 3, 4 / 5]);
    });

    it('what the chain says where places come', () => {
      const exact = (places: number): number =>
        exactThroughput({ rates: [1, 1], places: [places, places], between: [1] });
      check({ work, between: [1] }, { work, between: [1], places: 2 }, [exact(1), exact(2)]);
    });

    it('what the chain says where work takes half the time at one station', () => {
      const exact = (rate: number): number =>
        exactThroughput({ rates: [1, rate], places: [1, 1], between: [0] });
      check({ work, between: [0] }, { work: [exponential(1), exponential(0.5)], between: [0] }, [
        exact(1),
        exact(2),
      ]);
    });
  },
);
