import type { Scenario } from '../types/scenario.js';
import { once } from '../values/raw.js';
import { fewerFailures } from './failures.js';
import { moreStock, type SiteOfFeeder } from './feeders.js';
import { moreHours } from './hours.js';
import { morePeople } from './people.js';
import { morePlaces, moreSpaces } from './places.js';
import type { Relief } from './relief.js';
import { betterSteps } from './steps.js';
import { moreSupply } from './supplies.js';
import { keyOfThing } from './thing.js';
import { moreTransport } from './transport.js';

/**
 * All reliefs of a scenario, in a fixed order.
 * @param siteOfFeeder asked for a feeder over several sites, which else is at the first
 */
export function reliefsOf(scenario: Scenario, siteOfFeeder: SiteOfFeeder = () => undefined): Relief[] {
  const all = ofWhole(scenario, siteOfFeeder);
  return scenario.before === undefined ? all : all.map(alsoBefore);
}

function ofWhole(scenario: Scenario, siteOfFeeder: SiteOfFeeder): Relief[] {
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

/** Also of how it is before some changes are there, as far as there is such a thing then. */
const alsoBefore = (relief: Relief): Relief => ({
  ...relief,
  change: (from) => {
    const changed = relief.change(from);
    return {
      ...changed,
      before: from.before?.map(({ until, scenario }) => ({
        until,
        scenario: (reliefsBefore(scenario).get(keyOf(relief)) ?? STAYS)(scenario),
      })),
    };
  },
});

/** Asked of each stage by all reliefs. */
const reliefsBefore = once(
  (scenario: Scenario): ReadonlyMap<string, Relief['change']> =>
    new Map(ofWhole(scenario, () => undefined).map((each) => [keyOf(each), each.change])),
);
const keyOf = ({ kind, of, which }: Relief): string => JSON.stringify([kind, keyOfThing(of), which]);
const STAYS: Relief['change'] = (scenario) => scenario;
