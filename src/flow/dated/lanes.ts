import { LANE_TIMER } from '../floor/states.js';
import type { Model } from '../model/model.js';
import type { Run } from '../run.js';

/** Lanes, on their date: trucks, and the rule by which these leave. */

/** Only the trucks of a stage are there. */
export function withholdTrucks({ shop }: Run, { lanes }: Model): void {
  for (const lane of shop.lanes)
    if (lanes.trucks[lane.id] < lane.trucks.length) lane.withhold(lanes.trucks[lane.id]);
}

/** Trucks come, at base. */
export function bringTrucks(run: Run, { lanes }: Model): void {
  for (const lane of run.shop.lanes) {
    if (lanes.trucks[lane.id] === lane.trucks.length) continue;
    lane.bring(lanes.trucks[lane.id], run.now);
    run.listServe(lane);
  }
}

/** Waits and departures are timed by the rule that holds now; trucks under way are as they left. */
export function reviseLanes(run: Run, before: Model, next: Model): void {
  if (run.stage === 0 || next.lanes === before.lanes) return;
  for (const lane of run.shop.lanes) {
    if (lane.timerSet) {
      run.queue.remove(LANE_TIMER, lane.id);
      lane.timerSet = false;
    }
    run.listServe(lane);
  }
}
