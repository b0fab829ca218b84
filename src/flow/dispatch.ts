import { carrierBack } from './claims/carriers.js';
import { supplyEvent } from './claims/supplies.js';
import {
  CARRIER_BACK,
  DISRUPTION,
  LANE_TIMER,
  LOT_TIMER,
  PULSE,
  RELEASE,
  SHIFT_CHANGE,
  SUPPLY_LOT,
  TRUCK,
} from './floor/states.js';
import { shiftIsOver } from './interruptions/crews.js';
import { disrupt } from './interruptions/failures.js';
import { decide } from './interruptions/overtime.js';
import type { Run } from './run.js';
import { lotTimer } from './tasks/lots.js';
import { laneTimer, truckEvent } from './traffic/lanes.js';
import { pulseTimer } from './traffic/pulse-lines.js';
import { release } from './traffic/release.js';

/** An event that is no end of a task goes to its rule. */
export function dispatch(run: Run, kind: number, id: number): void {
  switch (kind) {
    case TRUCK:
      truckEvent(run, run.shop.trucks[id]);
      return;
    case RELEASE:
      release(run);
      return;
    case LANE_TIMER:
      laneTimer(run, run.shop.lanes[id]);
      return;
    case LOT_TIMER:
      lotTimer(run, run.shop.stations[id]);
      return;
    case CARRIER_BACK:
      carrierBack(run, id);
      return;
    case SUPPLY_LOT:
      supplyEvent(run, id);
      return;
    case SHIFT_CHANGE:
      if (id < run.crewShifts.length) shiftIsOver(run, run.crewShifts[id]);
      else decide(run, run.overtimeRules[id - run.crewShifts.length]);
      return;
    case DISRUPTION:
      disrupt(run, id);
      return;
    case PULSE:
      pulseTimer(run, run.shop.pulseLines[id]);
      return;
    default:
      throw new Error(`event: expected a kind that something sets up, got ${kind}`);
  }
}
