import { LOT_TIMER } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { valueOf } from './changeovers.js';
import { beginStep } from './tasks.js';

/**
 * Rule 5. Units of one step, where it has settings of one setting, gather in the places of a station; the
 * lot starts when it has the most it may have, or the least once its first unit has waited the longest wait.
 * While it runs nobody comes in; the next lot gathers when all are out.
 */
export function startLot(run: Run, station: Station): void {
  station.lotListed = false;
  const { lotGathered: gathered, lotDue: due } = station,
    least = run.model.stations.lotLeast[station.id];
  if (!station.lotOpen || gathered === 0 || station.equipment[0]?.isDown) return;
  if (gathered >= station.lotMost || (gathered >= least && run.now >= due)) begin(run, station);
  else if (due < Infinity && run.now < due && !station.lotTimerSet) {
    station.lotTimerSet = true;
    run.queue.push(due, LOT_TIMER, station.id);
  }
}

/**
 * Whether a unit may join the lot that gathers: at the step of its first unit, or at one like it, and with
 * its setting. What the places are set up for by an option is that of the first unit, whatever the others
 * have.
 */
export function mayJoin({ model }: Run, unit: Unit, { id, isSetUp, lotLead }: Station): boolean {
  const { lotKind } = model.steps,
    first = lotLead!.unit!;
  return (
    lotKind[unit.step.id] === lotKind[first.step.id] &&
    (!isSetUp || model.stations.changeoverOption[id] >= 0 || valueOf(model, unit) === valueOf(model, first))
  );
}

/** The longest wait of a lot may be over; a lot that began later has its own timer set. */
export function lotTimer(run: Run, station: Station): void {
  station.lotTimerSet = false;
  startLot(run, station);
}

/** Nothing more can come: the lot starts with what it has. True if there was one. */
export function startIncompleteLot(run: Run, station: Station): boolean {
  if (!station.lotOpen || station.lotGathered === 0 || station.equipment[0]?.isDown) return false;
  begin(run, station);
  return true;
}

function begin(run: Run, station: Station): void {
  const lead = station.lotLead!;
  station.lotOpen = false;
  station.lotInside = station.lotGathered;
  station.lotGathered = 0;
  for (const { unit } of station.places) if (unit !== null && unit !== lead.unit) unit.step.visits++;
  beginStep(run, lead, lead.unit!, lead.unit!.step);
}
