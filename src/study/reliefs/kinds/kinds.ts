import type { Scenario } from '../../../scenario/types/scenario.js';
import type { Relief } from '../relief.js';
import { fewerFailures } from './failures.js';
import { moreStock } from './feeders.js';
import { moreHours } from './hours.js';
import { morePeople } from './people.js';
import { morePlaces, moreSpaces } from './places.js';
import { betterSteps } from './steps.js';
import { moreSupply } from './supplies.js';
import { moreTransport } from './transport.js';

/** All reliefs of a scenario, in a fixed order. */
export function reliefsOf(scenario: Scenario): Relief[] {
  return [
    morePeople,
    morePlaces,
    moreSpaces,
    moreTransport,
    moreStock,
    moreSupply,
    betterSteps,
    moreHours,
    fewerFailures,
  ].flatMap((of) => of(scenario));
}
