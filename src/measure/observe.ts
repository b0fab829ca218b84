import { FINISHED, GRIDLOCK } from '../flow/engine.js';
import type { Run } from '../flow/run.js';
import { column, over } from './columns.js';
import { crewTime } from './crew-time.js';
import { observeFelt } from './felt.js';
import { observeFloor } from './floor.js';
import { observeQuality } from './quality.js';
import { activePeriods, observeResources, utilisations } from './resources.js';
import { observeUnits } from './units.js';

/**
 * What was observed in one replication. Plain data that can be sent between workers. Times are minutes since
 * the programme's start, shares 0..1 of the observed time, arrays in the order of the model's ids.
 */
export type Observation = Readonly<ReturnType<typeof observe>>;

/** Reads the accounts of a run that has ended. */
export function observe(run: Run, replication: number) {
  const minutes = run.now - run.observedFrom,
    floor = observeFloor(run),
    claimed = observeResources(run, crewTime(run));
  return {
    replication,
    outcome: outcomeOf(run),
    /** When the run ended, and the length observed. */
    endedAt: run.now,
    minutes,
    ...observeUnits(run),
    ...floor,
    ...claimed,
    ...observeQuality(run.tally, minutes),
    felt: observeFelt(run),
    /** Resources that can be a bottleneck: stations, crews, lanes, carriers, equipment, supplies. */
    utilisation: utilisations(run, claimed, floor.lanes.truckBusy),
    /** In the same order: mean active period, minutes; 0 if there was none. */
    activePeriod: activePeriods(run),
    /**
     * In the same order: share of the time observed as the sole momentary bottleneck, and as a shifting one;
     * null where it was not followed.
     */
    momentary: momentary(run, minutes),
    /**
     * Mean units inside by equal part of a steady-state run from its empty start; null where that was not
     * followed.
     */
    startUp: startUp(run),
    /** Who holds whom for ever, and how many wait behind; nobody unless the run ended in gridlock. */
    standstill: run.standstill,
  };
}

const outcomeOf = ({ outcome }: Run): 'finished' | 'ended' | 'gridlock' =>
  outcome === FINISHED ? 'finished' : outcome === GRIDLOCK ? 'gridlock' : 'ended';

function momentary({ bottleneckWatch: watch }: Run, minutes: number) {
  if (watch === null) return null;
  const share = (time: number): number => over(time, minutes);
  return { sole: column(watch.sole, share), shifting: column(watch.shifting, share) };
}

function startUp({ startUp: watch }: Run): Float64Array | null {
  return watch === null
    ? null
    : column(watch.unitMinutes, (unitMinutes) => over(unitMinutes, watch.partMinutes));
}
