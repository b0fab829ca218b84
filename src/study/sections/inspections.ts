import { HOLD_NONE } from '../../flow/model/quality.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { rowsOf } from '../lists.js';
import { unitQuantile } from '../programme/lead-time.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import { type Folded, occurring, type Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sum, sumOf } from '../statistics/sums.js';

export interface InspectionResult {
  readonly name: string;
  readonly site: string;
  /** Right first time over inspected, first visits only. */
  readonly ftt: Estimate;
  readonly inspectedPerUnit: Estimate;
  readonly sentBackPer100: Estimate;
  readonly repairedPer100: Estimate;
  readonly scrappedPer100: Estimate;
  /** Items present and missed here, per 100 visits. */
  readonly escapedPer100: Estimate;
}

/** An inspection that looks again at what an earlier one has looked at. */
export interface ComparisonResult {
  readonly first: string;
  readonly second: string;
  /** Units that both have seen, a replication. */
  readonly units: Estimate;
  /**
   * Shares of these, first visits: nothing found (good) or something (bad), at the first and at the second.
   */
  readonly goodGood: Estimate;
  readonly goodBad: Estimate;
  readonly badGood: Estimate;
  readonly badBad: Estimate;
  /** Share of good-good and bad-bad together. */
  readonly agreement: Estimate;
  /** Extra work where they differ, hours a replication. */
  readonly extraHours: Estimate;
}

/** An inspection or test: its running number in the observations, and its step. */
interface Inspection {
  readonly id: number;
  readonly step: number;
}

/** Inspections and tests to which a unit came in some replication, in route order. */
export function inspections(sample: Sample): Deferred<InspectionResult[]> {
  const { steps, stations, siteNames } = sample.model;
  const all = inspectionsOf(sample).map(({ id, step }) => {
    const per100 = (of: keyof Observation['inspections']): Deferred<Estimate> =>
      sample.amount(({ inspections }) => 100 * ratio(inspections[of][id], inspections.inspected[id]));
    return {
      times: visited(sample, id),
      row: {
        name: steps.names[step],
        site: siteNames[stations.site[steps.station[step]]],
        ftt: sample.share((each) => firstTimeThrough(each, id)),
        inspectedPerUnit: sample.amount(({ inspections, entered }) =>
          ratio(inspections.inspected[id], entered),
        ),
        sentBackPer100: per100('sentBack'),
        repairedPer100: per100('repaired'),
        scrappedPer100: per100('scrapped'),
        escapedPer100: per100('escaped'),
      },
    };
  });
  return occurring<InspectionResult>(all);
}

export function comparisons(sample: Sample): Pending<ComparisonResult[]> {
  const {
    quality: { compareWith },
    steps,
  } = sample.model;
  return inspectionsOf(sample).flatMap(({ id, step }): Pending<ComparisonResult>[] => {
    if (compareWith[step] < 0) return [];
    const cells = ({ quality: { compared } }: Observation): Float64Array =>
      compared.subarray(4 * id, 4 * id + 4);
    const all = (each: Observation): number => sum(cells(each));
    const share = (...wanted: number[]) =>
      sample.share((each) =>
        ratio(
          sumOf(wanted, (cell) => cells(each)[cell]),
          all(each),
        ),
      );
    return [
      {
        first: steps.names[compareWith[step]],
        second: steps.names[step],
        units: sample.amount(all),
        goodGood: share(0),
        goodBad: share(1),
        badGood: share(2),
        badBad: share(3),
        agreement: share(0, 3),
        extraHours: sample.amount(({ quality: { differMinutes } }) => differMinutes[id] / 60),
      },
    ];
  });
}

/**
 * Rolled throughput yield: the product of the first-time-through of all inspections of the unit's route,
 * taken in each replication over those to which a unit came. null without any.
 */
export function rolledYield(sample: Sample): Deferred<Estimate | null> {
  const ofUnits = inspectionsOf(sample).filter(({ step }) => sample.model.steps.route[step] === 0),
    visits = ofUnits.map(({ id }) => visited(sample, id));
  const all = sample.share((each) => {
    const yields = ofUnits
      .map(({ id }) => firstTimeThrough(each, id))
      .filter((share) => !Number.isNaN(share));
    return yields.length === 0 ? NaN : yields.reduce((product, share) => product * share, 1);
  });
  return new Deferred<Estimate | null>(() => (visits.some(({ value }) => value > 0) ? all : null));
}

const firstTimeThrough = ({ inspections }: Observation, id: number): number =>
  ratio(inspections.firstPasses[id], inspections.firstVisits[id]);

/** The engine numbers as inspections, in step order, all steps that may find something. */
function inspectionsOf({ model: { steps } }: Sample): Inspection[] {
  return Array.from(steps.station.keys())
    .filter((step) => rowsOf(steps.findStart, step).length > 0)
    .map((step, id) => ({ id, step }));
}

/** Replications in which a unit came to it. */
const visited = (sample: Sample, id: number): Folded<number> =>
  sample.count(({ inspections }) => inspections.inspected[id] > 0);

/** A step at which units are held until what was noted on them is mended. */
export interface HoldResult {
  readonly name: string;
  readonly site: string;
  /** Of the units that came to it. */
  readonly heldShare: Estimate;
  /** Units held or on the way to a place there, mean over time. */
  readonly units: Estimate;
  /** From the end of the step before to the release; P95 of all units released in all replications. */
  readonly daysMean: Estimate;
  readonly daysP95: Estimate;
  /** Items a replication. */
  readonly mended: Estimate;
}

export function holds(sample: Sample): Pending<HoldResult[]> {
  const { quality: columns, steps, stations, siteNames } = sample.model;
  return Array.from(columns.hold.keys())
    .filter((step) => columns.hold[step] !== HOLD_NONE)
    .map((step, h) => ({
      name: steps.names[step],
      site: siteNames[stations.site[steps.station[step]]],
      heldShare: sample.share(({ quality: { held, cameToHold } }) => ratio(held[h], cameToHold[h])),
      units: sample.amount(({ quality: { inHold } }) => inHold[h]),
      daysMean: sample.amount(({ quality: { holdMean } }) => holdMean[h] / MINUTES_PER_DAY),
      daysP95: unitQuantile(sample, 0.95, ({ quality: { holdTimes } }) => holdTimes[h]),
      mended: sample.events(({ quality: { mended } }) => mended[h]),
    }));
}
