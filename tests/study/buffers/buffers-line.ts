import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';

/** A saturated line of three stations, with a price for a place; `work` of all. */
export const threeStations = (work: string, buffers = [1, 1]): Scenario =>
  readScenario(
    `
scenario: three stations
programme: { arrivals: saturated, length: 400 h, warm up: 50 h }
costs: { currency: EUR, buffer place: { day: 12 } }
sites: { hall: { stations: { first: {}, second: { buffer: ${buffers[0]} }, third: { buffer: ${buffers[1]} } } } }
route: [{ step: a, at: first, work: ${work} }, { step: b, at: second, work: ${work} }, { step: c, at: third, work: ${work} }]
`,
    'three.yaml',
    () => '',
  ).scenario!;
