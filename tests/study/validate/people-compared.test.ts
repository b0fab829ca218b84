import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import {
  type PeopleSeen,
  peopleMeasures,
  wholeOf,
} from '../../../src/study/validate/seen/people-compared.js';
import { scenarioOf } from './shop.js';

const model = compile(
  scenarioOf(`
scenario: A crew of four
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 4 }
sites: { shop: { zone: UTC, crews: { fitters: 4 }, stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, crew: { fitters: 1 }, work: 1 h }]
`),
);
/** Minutes with 0, 1, 2 .. people at work. */
const seen = (minutes: readonly number[], waiting = 10): PeopleSeen => ({
  crew: 0,
  what: '',
  most: minutes.findLastIndex((each) => each > 0),
  minutes,
  waiting,
});
const simulated = [seen([10, 10, 20, 40, 20]), seen([10, 20, 20, 30, 20])].map((each) => [each]),
  of = (real: PeopleSeen) => {
    const { real: own, simulated: others, most } = peopleMeasures(model, [real], simulated);
    return {
      values: [own, ...others].map(([each]) => each.value),
      most: own.map((each) => most.get(each)),
    };
  };

describe('people at work at once', () => {
  it('are compared by how long there were more than ever in the log', () => {
    expect(of(seen([10, 10, 20, 60], 15)).values).toEqual([0, 0.2, 0.2]);
    // As many as the crew has are never too many.
    expect(of(seen([10, 10, 20, 40, 20])).values).toEqual([0, 0, 0]);
    expect(of(seen([10, 10, 20, 30, 20, 10])).values).toEqual([0.1, 0, 0]);
  });

  it('were no more where so many worked for long and units waited longer; else there was less to do', () => {
    // Three or more for 60 and 50 of 100 minutes in the model.
    const isCut = (real: PeopleSeen): boolean | undefined => of(real).most[0]?.isCut;
    expect(isCut(seen([10, 10, 20, 60], 15))).toBe(true);
    expect(isCut(seen([10, 10, 20, 60], 9))).toBe(false);
    expect(isCut(seen([40, 20, 20, 20], 15))).toBe(false);
    // A log without arrivals says nothing of waiting.
    expect(isCut(seen([10, 10, 20, 60], NaN))).toBe(true);
  });

  it('of a part of the period are told from those of the whole', () => {
    expect(['', 'shift 1', 'from 2027-09-20 on', 'shift 1, from 2027-09-20 on'].map(wholeOf)).toEqual([
      null,
      null,
      '',
      'shift 1',
    ]);
  });
});
