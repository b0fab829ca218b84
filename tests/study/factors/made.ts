import { readFactors } from '../../../src/scenario/changes/factors.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Zones } from '../../../src/study/compare/zones.js';
import { factorsDesign } from '../../../src/study/factors/design.js';
import type { FactorsResults } from '../../../src/study/factors/results.js';
import { answerOf } from '../../../src/study/run/fixed-design.js';

/** Two steps of 2 h and 1 h at 24 h a day, 4 units, one after the other: out at 3, 5, 7 and 9 h. */
export const YAML = `
scenario: four units
note: Invented data.
programme: { start: 2027-03-01, arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { bench: {}, trim bench: {} } } }
costs: { currency: EUR, unit: { day: 240 } }
route: [{ step: build, at: bench, work: 2 h }, { step: trim, at: trim bench, work: 1 h }]
`;
/** Built twice as fast, or trimmed twice as slowly. */
export const FACTORS = `
factors:
  build: { change: route.build.work, levels: [2 h, 1 h] }
  trim: { note: "slow, <and> sure", change: route.trim.work, levels: [1 h, 2 h] }
`;

export function designOf(text: string, yaml = YAML, replications = 3, zones?: Zones) {
  const { scenario } = readScenario(yaml, 'four.yaml', () => ''),
    { factors, problems } = readFactors(text, 'factors.yaml', { text: yaml, file: 'four.yaml' }, () => '');
  if (scenario === undefined || factors === undefined) throw new Error(JSON.stringify(problems));
  return factorsDesign({
    ...factors,
    ...{
      scenario,
      file: 'four.yaml',
      factorsFile: 'factors.yaml',
      replications,
      seed: 's',
      level: 0.95,
      zones,
    },
  });
}

export const studyOf = async (
  text: string,
  yaml = YAML,
  replications = 3,
  workers = 1,
): Promise<FactorsResults> => (await answerOf(designOf(text, yaml, replications), { workers })).results;
