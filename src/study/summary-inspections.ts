import type { Observation } from '../measure/observation.js';
import type { Estimate, InspectionResult } from './results.js';
import { ratio, type Sample } from './sample.js';

/** An inspection or test: its running number in the observations, and its step. */
interface Inspection { readonly id: number; readonly step: number }

/** Inspections and tests to which a unit came in some replication, in route order. */
export function inspections(sample: Sample): InspectionResult[] {
  const { steps, stations, siteNames } = sample.model;
  return visited(sample).map(({ id, step }) => {
    const per100 = (of: keyof Observation['inspections']): Estimate => sample.amount(({ inspections }) => 100 * ratio(inspections[of][id], inspections.inspected[id]));
    return {
      name: steps.names[step], site: siteNames[stations.site[steps.station[step]]],
      ftt: sample.share((each) => firstTimeThrough(each, id)),
      inspectedPerUnit: sample.amount(({ inspections, entered }) => ratio(inspections.inspected[id], entered)),
      sentBackPer100: per100('sentBack'), repairedPer100: per100('repaired'), scrappedPer100: per100('scrapped'), escapedPer100: per100('escaped'),
    };
  });
}

/**
 * Rolled throughput yield: the product of the first-time-through of all inspections of the unit's route, taken in each
 * replication over those to which a unit came. null without any.
 */
export function rolledYield(sample: Sample): Estimate | null {
  const ofUnits = visited(sample).filter(({ step }) => sample.model.steps.route[step] === 0);
  if (ofUnits.length === 0) return null;
  return sample.share((each) => {
    const yields = ofUnits.map(({ id }) => firstTimeThrough(each, id)).filter((share) => !Number.isNaN(share));
    return yields.length === 0 ? NaN : yields.reduce((product, share) => product * share, 1);
  });
}

const firstTimeThrough = ({ inspections }: Observation, id: number): number => ratio(inspections.firstPasses[id], inspections.firstVisits[id]);

/** The engine numbers as inspections, in step order, all steps that may find something. */
function visited({ model: { steps }, observations }: Sample): Inspection[] {
  const all = Array.from(steps.station.keys()).filter((step) => steps.findStart[step + 1] > steps.findStart[step]).map((step, id) => ({ id, step }));
  return all.filter(({ id }) => observations.some(({ inspections }) => inspections.inspected[id] > 0));
}
