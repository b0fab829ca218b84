import type { Scenario } from '../scenario/scenario.js';
import { fewerFailures, moreHours } from './relief-hours.js';
import { morePeople } from './relief-people.js';
import { morePlaces, moreSpaces } from './relief-places.js';
import { betterSteps } from './relief-steps.js';
import { moreTransport } from './relief-transport.js';
import type { Relief } from './relief.js';

/** All reliefs of a scenario, in a fixed order. */
export function reliefsOf(scenario: Scenario): Relief[] {
  return [morePeople, morePlaces, moreSpaces, moreTransport, betterSteps, moreHours, fewerFailures].flatMap(
    (of) => of(scenario),
  );
}
