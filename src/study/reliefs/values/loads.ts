import type { Model } from '../../../flow/model/model.js';
import { CARRIER, EQUIPMENT, STOCK, SUPPLY } from '../../../flow/model/resources.js';
import type { Observation } from '../../../measure/observe.js';
import { keyOfThing, type ThingKind } from '../../../scenario/reliefs/thing.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { capacity } from '../../capacity/capacity.js';
import type { LimitKind } from '../../capacity/limits.js';
import { defined, named } from '../../lists.js';
import { mean } from '../../statistics/sums.js';

/**
 * How near to its limit something is, 0 to 1; of what is not known 0. Only crews and equipment need a site.
 */
export type Loads = (kind: ThingKind, name: string, site?: string) => number;

/**
 * The greater of two hints, cheap and each blind where the other sees. By arithmetic: the least capacity of
 * all over its own, which knows no chance and no waiting. By the runs: the mean share of time in use or, of
 * a stock, without a part, which counts as used what only waits for the constraint.
 * @param seen none: by arithmetic alone
 */
export function loadsOf(scenario: Scenario, model: Model, seen: readonly Observation[]): Loads {
  const loads = new Map<string, number>(),
    note = (kind: LimitKind, name: string, site: string, load: number): void => {
      const key = keyOfThing({ kind, name, site });
      loads.set(key, Math.min(1, Math.max(load, loads.get(key) ?? 0)));
    };
  const { rows, highestRatePerDay: least } = capacity(model, scenario);
  for (const { kind, name, site, capacityPerDay: own } of rows)
    note(kind, name, site, least === null || own === null ? 0 : own === 0 ? 1 : least / own);

  const of = (kind: ThingKind, name: string, site = ''): number =>
    loads.get(keyOfThing({ kind, name, site })) ?? 0;
  if (seen.length === 0) return of;

  const { stations, resources, lanes } = model,
    ids = (kind: number): number[] =>
      [...resources.kind.keys()].filter((resource) => resources.kind[resource] === kind);
  const used = [
    ...stations.names.map((_, id) => ({ kind: 'station' as const, ...named(model, 'stations', id) })),
    ...Array.from({ length: resources.crews }, (_, id) => ({
      kind: 'crew' as const,
      ...named(model, 'resources', id),
    })),
    ...lanes.names.map((name) => ({ kind: 'lane' as const, name, site: '' })),
    ...ids(CARRIER).map((id) => ({ kind: 'carrier' as const, ...named(model, 'resources', id) })),
    ...ids(EQUIPMENT).map((id) => ({ kind: 'equipment' as const, ...named(model, 'resources', id) })),
  ];
  used.forEach(({ kind, name, site }, i) => {
    note(kind, name, site, mean(seen.map(({ utilisation }) => defined(utilisation[i]))));
  });
  for (const [kind, of] of [
    ['feeder', STOCK],
    ['supply', SUPPLY],
  ] as const)
    for (const id of ids(of))
      note(kind, defined(resources.names[id]), '', mean(seen.map(({ stockOut }) => defined(stockOut[id]))));
  return of;
}
