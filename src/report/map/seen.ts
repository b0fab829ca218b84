import { calledThing } from '../../study/constraint/sentence.js';
import { mean } from '../../study/format.js';
import type { Thing } from '../../study/reliefs/thing.js';
import type { Results } from '../../study/simulate/results.js';
import { toldConstraint } from '../constraint.js';

/** What a run has seen of the things on the map; shares are 0..1. */
export interface Seen {
  readonly replications: number;
  /** The weeks of use, in words. */
  readonly weeks: string;
  readonly station: (name: string) => StationSeen | undefined;
  /** Units standing ahead of a station, or in a bank, on average. */
  readonly waiting: (name: string) => number | undefined;
  readonly crewUse: (site: string, name: string) => number | undefined;
  readonly laneUse: (name: string) => number | undefined;
  readonly passes: (site: string, step: string) => number | undefined;
  /** Sent back, of the units looked at. */
  readonly sentBack: (site: string, step: string) => number | undefined;
  readonly stops: { readonly thing: Thing; readonly text: string } | undefined;
  readonly answer: string;
}
export interface StationSeen {
  /** Share of the hours of its places in which something was done to a unit. */
  readonly use: number;
  /** Units in its places on average, of these hours. */
  readonly standing: number;
}

/** By what a planner calls things. */
export function seenIn(results: Results): Seen {
  const constraint = toldConstraint(results),
    judged = constraint?.judged ?? undefined,
    { culprit = null } = constraint ?? {};
  const stations = new Map((judged?.stations ?? results.stations).map((each) => [each.name, each])),
    buffers = new Map(results.buffers.map((each) => [each.name, each.mean.mean])),
    crews = judged?.crews ?? results.crews,
    lanes = judged?.lanes ?? results.lanes,
    looked = (site: string, step: string) =>
      results.inspections.find((each) => each.name === step && each.site === site);
  return {
    replications: results.replications,
    weeks: judged === undefined ? 'the whole run' : `the weeks from ${judged.from} to ${judged.to}`,
    station: (name) => {
      const row = stations.get(name);
      if (row === undefined) return undefined;
      const { working, changeover, unattended, starved, down } = row.shareOnShift;
      return {
        use: working.mean + changeover.mean + unattended.mean,
        standing: row.places * Math.max(0, 1 - starved.mean - down.mean),
      };
    },
    waiting: (name) => buffers.get(name),
    crewUse: (site, name) => crews.find((each) => each.name === name && each.site === site)?.busy.mean,
    laneUse: (name) => lanes.find((each) => each.name === name)?.truckBusy.mean,
    passes: (site, step) => looked(site, step)?.ftt.mean,
    sentBack: (site, step) => {
      const row = looked(site, step);
      return row === undefined ? undefined : row.sentBackPer100.mean / 100;
    },
    stops:
      culprit === null
        ? undefined
        : {
            thing: culprit.thing,
            text:
              `${calledThing(culprit.thing)} stops it: ` +
              `with ${culprit.what} it ships ${mean(culprit.gain)} a day more`,
          },
    answer: `${mean(results.answer.heldPerDay ?? results.throughput.perDay)} a working day shipped`,
  };
}
