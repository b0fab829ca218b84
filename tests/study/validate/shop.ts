import { floorLog } from '../../../src/flow/floor-log.js';
import { prepare } from '../../../src/flow/plan.js';
import type { FloorEvent } from '../../../src/records/log/event.js';
import { eventsOfRun } from '../../../src/records/log/of-run.js';
import { compile } from '../../../src/scenario/compile.js';
import { runSpan } from '../../../src/scenario/programme/span.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import type { LogSource } from '../../../src/study/validate/types.js';

export function scenarioOf(yaml: string): Scenario {
  const { scenario, problems } = readScenario(yaml, 'shop.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

/** The log of a replication of a scenario. */
export function logOf(scenario: Scenario, seed: string, replication = 1): FloorEvent[] {
  const model = compile(scenario),
    { happenings } = floorLog(prepare(model), seed, replication);
  return [...eventsOfRun(happenings, model, runSpan(scenario).origin)];
}

export const sourceOf = (events: readonly FloorEvent[]): LogSource => ({
  file: 'made.csv',
  read: (take) => {
    take(events);
    return Promise.resolve(null);
  },
});

export interface Changed {
  readonly weld?: string;
  readonly found?: string;
  readonly fitters?: number;
  readonly units?: number;
}

/** Invented: a line of six steps with an inspection of two defects, and a last gate. */
export const shop = (changed: Changed): string => `
scenario: Mid-size shop
programme: { start: 2027-03-01, rate: { per day: 6 }, quantity: ${changed.units ?? 200}, options: { cab: { long: 40 %, short: 60 % } } }
calendars: { day: { hours: ['06:00-14:00'], on: [Mon, Tue, Wed, Thu, Fri] } }
defects: { dirt: {}, gap: {} }
sites:
  body shop:
    zone: Europe/Oslo
    calendar: day
    crews: { welders: 4, painters: 4, fitters: ${changed.fitters ?? 5}, inspectors: 3 }
    stations:
      weld bay: { places: 3, buffer: 8 }
      booth: { places: 2, buffer: 8, rework buffer: unlimited }
      tunnel: { places: 2, buffer: unlimited }
      fit bay: { places: 4, buffer: 8 }
      wire bay: { places: 3, buffer: 8 }
      gate: { places: 2, buffer: unlimited }
route:
  - { step: weld, at: weld bay, crew: { welders: 1 }, work: { mean: ${changed.weld ?? '150 min'}, cv: 0.25 }, creates: { gap: 20 % } }
  - { step: coat, at: booth, crew: { painters: 2 }, work: { mean: 100 min, cv: 0.2 }, creates: { dirt: 25 % } }
  - step: inspect
    at: tunnel
    crew: { inspectors: 1 }
    work: { mean: 40 min, cv: 0.3 }
    finds:
      dirt: { chance: ${changed.found ?? '80 %'}, repair: 30 min }
      gap: { chance: 50 %, back to: coat, limit: 2 }
  - { step: fit, at: fit bay, crew: { fitters: 1 }, work: { mean: 200 min, cv: 0.3 } }
  - { step: wire, at: wire bay, crew: { fitters: 1 }, work: { mean: 130 min, cv: 0.3 } }
  - { step: last look, at: gate, crew: { inspectors: 1 }, work: { mean: 30 min, cv: 0.2 }, finds: { dirt: { chance: 90 %, repair: 45 min }, gap: { chance: 90 %, repair: 1 h } } }
`;
