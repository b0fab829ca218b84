import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';

/** What a plant has; all numbers are invented. */
export interface Plant {
  readonly places?: number;
  readonly welders?: number;
  readonly buffer?: number;
  readonly target?: number;
  readonly standing?: number;
  /** Keys of the changes that are named below. */
  readonly jig?: string;
  readonly crew?: string;
  readonly fewer?: string;
  readonly shelf?: string;
  readonly stock?: string;
  /** Further lines. */
  readonly programme?: string;
  readonly more?: string;
}

/** A scenario file whose possible changes are a place, a crew that requires it, fewer people, a space. */
export const plant = ({
  places = 1,
  welders = 3,
  buffer = 1,
  target = 2,
  standing,
  jig = '',
  crew = '',
  fewer = '',
  shelf = '',
  stock = '',
  programme = 'quantity: 40',
  more = '',
}: Plant = {}): string => `
scenario: made
note: a remark of the scenario
programme: { start: 2028-01-31, ${programme}, rate: { per day: 2 } }
sites:
  a: { zone: Europe/Oslo, crews: { welders: ${welders} }, stations: { jig: { places: ${places}, buffer: ${buffer} }, stand: {} } }
feeders: { doors: { stock: ${target}, route: [{ step: hang, at: stand, work: 20 min }] } }
route:
  - { step: weld, at: jig, work: 60 min, crew: { welders: 1 }, parts: { doors: 1 } }
costs:
  currency: EUR${standing === undefined ? '' : `\n  standing: { day: ${standing} }`}
  changes:
    jig more: { relief: place, of: jig, price: 1000, day: 4, ready after: 1 month, at most: 2${jig} }
    crew: { changes: [{ sites.a.crews.welders: 5 }], price: 300, ready after: 4 weeks, requires: jig more${crew} }
    fewer: { changes: [{ sites.a.crews.welders: 2 }], excludes: [crew]${fewer} }
    shelf: { relief: space, of: jig, price: 10${shelf} }
    doors more: { relief: target stock, of: doors, day: 1${stock} }
${more}`;

export const readPlant = (text: string): ReturnType<typeof readScenario> =>
  readScenario(text, 'made.yaml', () => '');

export function scenarioOf(text: string): Scenario {
  const { scenario, problems } = readPlant(text);
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}
export const digestOf = (text: string): string => digest(scenarioOf(text));

/** What is said of a plant, without its lines. */
export const saidOf = (of: Plant): string[] =>
  (readPlant(plant(of)).problems ?? []).map((problem) =>
    sayProblem(problem).replace(/^made\.yaml:\d+:\d+ /, ''),
  );
