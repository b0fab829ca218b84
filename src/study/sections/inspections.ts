import type { Observation } from '../../measure/observe.js';
import { Later } from '../sample/deferred.js';
import type { Estimate, InspectionResult } from '../simulate/results.js';
import { ratio, type Sample } from '../sample/sample.js';

/** An inspection or test: its running number in the observations, and its step. */
interface Inspection {
  readonly id: number;
  readonly step: number;
}

/** Inspections and tests to which a unit came in some replication, in route order. */
export function inspections(sample: Sample): Later<InspectionResult[]> {
  const { steps, stations, siteNames } = sample.model;
  const all = inspectionsOf(sample).map(({ id, step }) => {
    const per100 = (of: keyof Observation['inspections']): Later<Estimate> =>
      sample.amount(({ inspections }) => 100 * ratio(inspections[of][id], inspections.inspected[id]));
    return {
      visited: visited(sample, id),
      result: {
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
  return new Later<InspectionResult[]>(() =>
    all.filter((each) => each.visited.value > 0).map(({ result }) => result),
  );
}

/**
 * Rolled throughput yield: the product of the first-time-through of all inspections of the unit's route,
 * taken in each replication over those to which a unit came. null without any.
 */
export function rolledYield(sample: Sample): Later<Estimate | null> {
  const ofUnits = inspectionsOf(sample).filter(({ step }) => sample.model.steps.route[step] === 0),
    visits = ofUnits.map(({ id }) => visited(sample, id));
  const all = sample.share((each) => {
    const yields = ofUnits
      .map(({ id }) => firstTimeThrough(each, id))
      .filter((share) => !Number.isNaN(share));
    return yields.length === 0 ? NaN : yields.reduce((product, share) => product * share, 1);
  });
  return new Later<Estimate | null>(() => (visits.some(({ value }) => value > 0) ? all : null));
}

const firstTimeThrough = ({ inspections }: Observation, id: number): number =>
  ratio(inspections.firstPasses[id], inspections.firstVisits[id]);

/** The engine numbers as inspections, in step order, all steps that may find something. */
function inspectionsOf({ model: { steps } }: Sample): Inspection[] {
  return Array.from(steps.station.keys())
    .filter((step) => steps.findStart[step + 1] > steps.findStart[step])
    .map((step, id) => ({ id, step }));
}

/** Replications in which a unit came to it. */
const visited = (sample: Sample, id: number): Later<number> =>
  sample.count(({ inspections }) => inspections.inspected[id] > 0);
