import type { Model } from '../../flow/model/model.js';
import { CARRIER, equipmentOf } from '../../flow/model/resources.js';
import type { Observation } from '../../measure/observe.js';
import { laneNamed, named } from '../lists.js';
import { Deferred, type Pending, resolved } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { carrierSite } from './carriers.js';

export interface BottleneckResult {
  readonly name: string;
  readonly kind: 'station' | 'crew' | 'lane' | 'carrier' | 'equipment' | 'supply';
  readonly site: string;
  /** Share of replications in which it was the bottleneck: had the highest utilisation. */
  readonly share: Proportion;
  /** Mean uninterrupted active period, hours. */
  readonly activePeriodHours: Estimate;
  /** Utilisation: active time over time on shift. */
  readonly active: Estimate;
  /**
   * Share of the time observed in which it was the sole momentary bottleneck, and a shifting one; `n` 0 where
   * that was not followed.
   */
  readonly sole: Estimate;
  readonly shifting: Estimate;
}

/**
 * What can be a bottleneck, the likeliest first. The bottleneck of a replication is the station, crew, lane,
 * kind of carrier, of equipment or supply with the highest utilisation (Hopp & Spearman, Factory Physics, 3rd
 * ed. 2008, ch. 7); the first in this order of those that are level. The mean active period (Roser, Nakano &
 * Tanaka 2001) stands beside it, for replications in which there was one.
 */
export function bottlenecks(sample: Sample): Deferred<BottleneckResult[]> {
  const times = sample.counts(busiest);
  const all = resources(sample).map(
    ({ id, ...resource }): Pending<BottleneckResult> => ({
      ...resource,
      share: new Deferred(() => proportion(times.value.of(id), sample.replications, sample.level)),
      activePeriodHours: sample.amount(({ activePeriod }) =>
        activePeriod[id] > 0 ? activePeriod[id] / 60 : NaN,
      ),
      active: sample.share(({ utilisation }) => utilisation[id]),
      sole: sample.share(({ momentary }) => momentary?.sole[id] ?? NaN),
      shifting: sample.share(({ momentary }) => momentary?.shifting[id] ?? NaN),
    }),
  );
  return new Deferred(() =>
    resolved<BottleneckResult[]>(all).sort(
      (a, b) => b.share.count - a.share.count || b.active.mean - a.active.mean,
    ),
  );
}

/** Name of the bottleneck of a replication; null if nothing was active. */
export function bottleneckOf(model: Model): (observation: Observation) => string | null {
  const names = new Map(resources({ model }).map(({ id, name }) => [id, name]));
  return (observation) => names.get(busiest(observation)) ?? null;
}

/** Index of the highest utilisation; -1 if all are 0. */
export function busiest({ utilisation }: Pick<Observation, 'utilisation'>): number {
  return utilisation.reduce((best, each, id) => (each > (best < 0 ? 0 : utilisation[best]) ? id : best), -1);
}

export interface Resource extends Pick<BottleneckResult, 'name' | 'kind' | 'site'> {
  readonly id: number;
}

/**
 * In the order of `Observation.utilisation`: stations, crews, lanes, carriers, equipment, supplies. Arrival
 * banks have no equipment.
 */
export function resources({ model }: Pick<Sample, 'model'>): Resource[] {
  const { stations, resources, lanes, siteNames, companions, supplies } = model;
  const all: Omit<Resource, 'id'>[] = [
    ...stations.names.map((name, i) => ({
      name,
      kind: 'station' as const,
      site: siteNames[stations.site[i]],
    })),
    ...resources.names
      .slice(0, resources.crews)
      .map((name, i) => ({ name, kind: 'crew' as const, site: siteNames[resources.site[i]] })),
    ...lanes.names.map((_, i) => ({ ...laneNamed(model, i), kind: 'lane' as const })),
    ...companions.names
      .map((name, i) => ({ name, kind: 'carrier' as const, site: carrierSite({ model }, i) }))
      .filter((_, i) => resources.kind[companions.resource[i]] === CARRIER),
    ...equipmentOf(resources).map((resource) => ({
      ...named(model, 'resources', resource),
      kind: 'equipment' as const,
    })),
    ...Array.from(supplies.resource, (resource) => ({
      ...named(model, 'resources', resource),
      kind: 'supply' as const,
    })),
  ];
  return all.map((resource, id) => ({ ...resource, id })).filter(({ id }) => stations.isBank[id] !== 1);
}
