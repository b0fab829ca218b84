import { bankName } from '../../scenario/lookup/ids.js';
import { layRoutes } from '../../scenario/lookup/laid.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Mapping } from '../names.js';
import { WallClock } from '../table/wall-clock.js';
import type { Known } from './cleaned.js';

/**
 * What a scenario knows of a log: its names, the zones of its sites, and which steps are done side by side.
 * A lane goes by the clock of the site that it leaves, its arrival bank by that of the other.
 */
export function knownOf(scenario: Scenario, names: Mapping = {}): Known {
  const { sites, lanes, programme } = scenario,
    { steps } = layRoutes(scenario),
    clocks = new Map<string, WallClock>(),
    zoneOf = new Map<string, string>(),
    groupOf = new Map<string, number>(),
    stepZone = new Map<string, string>();
  for (const { zone, stations } of Object.values(sites))
    for (const station of Object.keys(stations)) zoneOf.set(station, zone);
  for (const [lane, { from, to }] of Object.entries(lanes))
    for (const [name, site] of [
      [lane, from],
      [bankName(lane), to],
    ] as const) {
      const zone = sites[site]?.zone;
      if (zone !== undefined) zoneOf.set(name, zone);
    }
  for (const laid of steps) {
    const zone = zoneOf.get(
      laid.kind === 'step' ? laid.step.at : laid.kind === 'lane' ? laid.lane : laid.name,
    );
    if (zone !== undefined && !stepZone.has(laid.name)) stepZone.set(laid.name, zone);
    if (laid.kind === 'step' && laid.group !== undefined) groupOf.set(laid.name, laid.group);
  }
  const clock = (zone: string): WallClock => {
    const made = clocks.get(zone) ?? new WallClock(zone);
    clocks.set(zone, made);
    return made;
  };
  return {
    steps: steps.map(({ name }) => name),
    stations: [...zoneOf.keys()],
    names,
    clockOf: (step, station) => clock(zoneOf.get(station) ?? stepZone.get(step) ?? programme.zone),
    mayBoth: (step, other) => groupOf.has(step) && groupOf.get(step) === groupOf.get(other),
  };
}
