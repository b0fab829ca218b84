import { basename } from 'node:path';
import type { Observation } from '../measure/observation.js';
import { compile } from '../scenario/compile.js';
import { programmeClock } from '../scenario/compile-clock.js';
import type { Scenario } from '../scenario/scenario.js';
import type { FixedDesign } from './fixed-design.js';
import { identityOf } from './identity.js';
import { journey as journeyOf, type JourneyAsked } from './journey.js';
import type { Results } from './results.js';
import { summarise } from './summary.js';

/** What `simulate` is asked, as plain JSON. */
export interface SimulateAsked { readonly scenario: Scenario; readonly file: string; readonly replications: number; readonly seed: string; readonly level: number }

/** The first so many replications are watched closely, which makes them up to a third slower. */
export const CLOSELY = 10;

/** A scenario, many times over. The journey is told when it is summed up, and needs one replication once more. */
export function simulateDesign({ scenario, file, replications, seed, level }: SimulateAsked, journey?: JourneyAsked): FixedDesign<Observation, Results> {
  const model = compile(scenario);
  return {
    identity: identityOf({ study: 'simulate', scenario, seed, level }),
    variants: [{ key: 'base', model, closely: CLOSELY }],
    replications, seed,
    read: (observation) => observation,
    gather: () => {
      const observations: Observation[] = [];
      return {
        take: (observation) => void observations.push(observation),
        found: () => {
          const clock = programmeClock(scenario), results = summarise({ scenario, model, clock, observations, file: basename(file), seed, level });
          return journey === undefined ? results : { ...results, journey: journeyOf(model, clock, seed, observations[0]!, journey) };
        },
      };
    },
  };
}
