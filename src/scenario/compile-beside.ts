import { UNLIMITED, type Model } from '../flow/model.js';
import type { LaidRoutes } from './compile-route.js';
import type { Scenario } from './scenario.js';

export function compileBeside(
  scenario: Scenario,
  laid: LaidRoutes,
  stations: Model['stations'],
): Model['beside'] {
  const people = new Map(
    Object.values(scenario.sites).flatMap((site) =>
      Object.entries(site.stations).map(([name, station]) => [name, station.people]),
    ),
  );
  const group = Int32Array.from(laid.steps, (step) => (step.kind === 'step' ? (step.group ?? -1) : -1));
  return {
    group,
    most: Int32Array.from(stations.names, (name) =>
      Math.max(
        0,
        ...laid.steps.map((step) =>
          step.kind === 'step' && step.step.at === name ? (step.step.sideBySide?.length ?? 0) : 0,
        ),
      ),
    ),
    people: Int32Array.from(stations.names, (name) => people.get(name) ?? UNLIMITED),
  };
}
