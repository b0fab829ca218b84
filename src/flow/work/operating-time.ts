import type { Equipment, FailureMode } from '../floor/equipment.js';
import type { Run } from '../run.js';

/**
 * Operating time: the minutes in which a place is at its task (changeover, work, settle, process, repair
 * work), each in the calendar that governs it. They are charged when a task begins; what is broken off is
 * given back.
 */

/**
 * A task of so many minutes begins: the failure that comes first in it, if any, is scheduled. One that falls
 * on its end comes with the next task.
 */
export function operate(run: Run, equipment: Equipment, calendar: number, minutes: number): void {
  let first: FailureMode | null = null;
  for (const mode of equipment.modes)
    if (!mode.byClock && (first === null || mode.left < first.left)) first = mode;
  if (first === null) return;
  cancel(run, equipment);
  const charged = Math.min(first.left, minutes);
  for (const mode of equipment.modes) mode.left -= charged;
  equipment.charged = charged;
  equipment.since = run.now;
  equipment.calendar = calendar;
  if (charged === minutes) return;
  equipment.next = first;
  run.disruptions.schedule(run.queue, first.source, run.memory.after(calendar, charged));
}

/** The task under way is broken off, for whatever reason. */
export function stopOperating(run: Run, equipment: Equipment): void {
  cancel(run, equipment);
  if (equipment.charged === 0) return;
  const { calendar, since } = equipment,
    worked = run.memory.worked(calendar, since, run.now);
  for (const mode of equipment.modes) mode.left += Math.max(0, equipment.charged - worked);
  equipment.charged = 0;
}

function cancel(run: Run, equipment: Equipment): void {
  if (equipment.next === null) return;
  run.disruptions.unschedule(run.queue, equipment.next.source);
  equipment.next = null;
}
