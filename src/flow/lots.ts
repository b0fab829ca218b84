import type { Run } from './run.js';
import { LOT_TIMER } from './states.js';
import { beginStep } from './tasks.js';

/**
 * Rule 5. Units of one step gather in the places of a station; the lot starts when it has the most it may have, or the
 * least once its first unit has waited the longest wait. While it runs nobody comes in; the next lot gathers when all are out.
 */
export function startLot(run: Run, station: number): void {
  const { stations } = run.model, gathered = run.lotGathered[station];
  if (run.lotOpen[station] === 0 || gathered === 0) return;
  const due = run.lotDue[station];
  if (gathered === stations.lotMost[station] || (gathered >= stations.lotLeast[station] && run.now >= due)) begin(run, station);
  else if (due < Infinity && run.now < due && run.lotTimer[station] !== due) {
    run.lotTimer[station] = due;
    run.queue.due[0] = due;
    run.queue.push(LOT_TIMER, station);
  }
}

/** Nothing more can come: the lot starts with what it has. True if there was one. */
export function startIncompleteLot(run: Run, station: number): boolean {
  if (run.lotOpen[station] === 0 || run.lotGathered[station] === 0) return false;
  begin(run, station);
  return true;
}

function begin(run: Run, station: number): void {
  const lead = run.lotLead[station], members = run.lotGathered[station];
  run.lotOpen[station] = 0;
  run.lotInside[station] = members;
  run.lotGathered[station] = 0;
  run.tally.stepVisits[run.lotStep[station]] += members - 1;
  beginStep(run, lead);
}
