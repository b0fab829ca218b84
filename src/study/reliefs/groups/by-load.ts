import type { Model } from '../../../flow/model/model.js';
import { stationsOf } from '../../../scenario/lookup/placed.js';
import { teamsOf } from '../../../scenario/plant/teams.js';
import type { Thing } from '../../../scenario/reliefs/thing.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { byLoad } from '../values/bearing.js';
import { loadsOf } from '../values/loads.js';
import { stepShares } from '../values/step-shares.js';

/** Room is not what is short, it only keeps what is from waiting: taken as a tenth, as for values. */
const OF_ROOM = 0.1;

/**
 * How much more of a thing may bring, 0 to 1, by arithmetic alone: no replication may choose who is tried
 * together, since it is the replications that say what those bring. No more than a hint, by which those that
 * may gain stand in the same few groups.
 */
export function byArithmetic(scenario: Scenario, model: Model): (thing: Thing) => number {
  const weight = byLoad(loadsOf(scenario, model, [])),
    shares = stepShares(model),
    stations = stationsOf(scenario),
    crewOf = new Map(teamsOf(scenario).map(({ name, kind: { crew } }) => [name, crew]));
  const most = (weights: readonly number[]): number => Math.max(0, ...weights);
  /** Whatever works by a calendar. */
  const hours = (calendar: string): number =>
    most(
      Object.entries(scenario.sites).flatMap(([site, its]) => [
        ...Object.entries(its.stations)
          .filter(([, { calendar: own }]) => (own ?? its.calendar) === calendar)
          .map(([name]) => weight('station', name)),
        ...Object.entries(its.crews)
          .filter(([, { calendar: own }]) => (own ?? its.calendar) === calendar)
          .map(([name]) => weight('crew', name, site)),
      ]),
    );
  return ({ kind, name, site }) => {
    switch (kind) {
      case 'step':
        return most((shares.get(name) ?? []).map((of) => of.share * weight(of.kind, of.name, of.site)));
      case 'room':
        return OF_ROOM * (stations.has(name) ? weight('station', name) : weight('lane', name));
      case 'team':
        return weight('crew', crewOf.get(name) ?? '', site);
      case 'hours':
        return hours(name);
      default:
        return weight(kind, name, site);
    }
  };
}
