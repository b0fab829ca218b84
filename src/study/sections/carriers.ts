import { CARRIER } from '../../flow/model/resources.js';
import type { Deferred, Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

export interface CarriersResult {
  readonly name: string;
  /** Site in which they are claimed; with that in which they are given back, if it is another. */
  readonly site: string;
  readonly count: number;
  /** Mean numbers with units, on the way back, and free; they add to the count. */
  readonly inUse: Estimate;
  readonly comingBack: Estimate;
  readonly free: Estimate;
  /** Share of time with none free. */
  readonly noneFree: Estimate;
  /**
   * Mean time with one unit, the way back not included (Little 1961: time with units over holds that ended).
   */
  readonly holdHours: Estimate;
}
export interface TeamResult {
  readonly name: string;
  readonly site: string;
  readonly crew: string;
  readonly people: number;
  /** Mean number of such teams with units. */
  readonly inUse: Estimate;
  /** Those of them without people, as too few are there; left out where no shift of the crew differs. */
  readonly withoutPeople?: Estimate;
  readonly holdHours: Estimate;
}

/** Carriers in the order of the scenario. */
export function carriers(sample: Sample): Pending<CarriersResult[]> {
  const { companions, resources } = sample.model;
  return ids(sample, true).map((id) => {
    const resource = companions.resource[id];
    return {
      name: companions.names[id],
      site: carrierSite(sample, id),
      count: resources.amount[resource],
      inUse: sample.amount((each) => each.kept.held[id]),
      comingBack: sample.amount((each) => each.kept.coming[id]),
      free: sample.amount(({ stockMean }) => stockMean[resource]),
      noneFree: sample.share(({ stockOut }) => stockOut[resource]),
      holdHours: holdHours(sample, id),
    };
  });
}

export function teams(sample: Sample): Pending<TeamResult[]> {
  const { companions, resources, siteNames } = sample.model;
  return ids(sample, false).map((id) => ({
    name: companions.names[id],
    site: siteNames[resources.site[companions.resource[id]]],
    crew: resources.names[companions.resource[id]],
    people: companions.amount[id],
    inUse: sample.amount((each) => each.kept.held[id]),
    ...(resources.shifts[companions.resource[id]] !== null && {
      withoutPeople: sample.amount((each) => each.kept.unstaffed[id]),
    }),
    holdHours: holdHours(sample, id),
  }));
}

/** Where carriers are claimed, and where they are given back if that is in another site. */
export function carrierSite(
  { model: { companions, steps, stations, siteNames } }: Pick<Sample, 'model'>,
  id: number,
): string {
  const [from, to] = [companions.from[id], companions.to[id]].map(
    (step) => siteNames[stations.site[steps.station[step]]],
  );
  return from === to ? from : `${from} to ${to}`;
}

function ids({ model: { companions, resources } }: Sample, areCarriers: boolean): number[] {
  return Array.from(companions.resource.keys()).filter(
    (id) => (resources.kind[companions.resource[id]] === CARRIER) === areCarriers,
  );
}

function holdHours(sample: Sample, id: number): Deferred<Estimate> {
  return sample.amount(({ minutes, kept: { held, ended } }) => ratio((held[id] * minutes) / 60, ended[id]));
}
