import type { Scenario } from '../types/scenario.js';
import { fewerFailures } from './failures.js';
import { moreStock, type SiteOfFeeder } from './feeders.js';
import { moreHours } from './hours.js';
import { morePeople } from './people.js';
import { morePlaces, moreSpaces } from './places.js';
import type { Relief } from './relief.js';
import { betterSteps } from './steps.js';
import { moreSupply } from './supplies.js';
import { moreTransport } from './transport.js';

/**
 * All reliefs of a scenario, in a fixed order.
 * @param siteOfFeeder asked for a feeder over several sites, which else is at the first
 */
export function reliefsOf(scenario: Scenario, siteOfFeeder: SiteOfFeeder = () => undefined): Relief[] {
  return [
    morePeople,
    morePlaces,
    moreSpaces,
    moreTransport,
    (of: Scenario) => moreStock(of, siteOfFeeder),
    moreSupply,
    betterSteps,
    moreHours,
    fewerFailures,
  ].flatMap((of) => of(scenario));
}
