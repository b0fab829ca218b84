import { letGo } from '../claims/carriers.js';
import { enterState } from '../floor/ledger.js';
import {
  B_CALENDAR,
  B_FREE_PLACE,
  NOWHERE,
  P_NEXT_FREE,
  P_PASS,
  P_PHASE,
  P_UNIT,
  PLACE_SHIFT,
  S_CALENDAR,
  S_FLAGS,
  S_VISITS,
  S_WORK_DRAW,
  STEP_SHIFT,
  U_FIRST,
  U_PLACE,
} from '../floor/memory.js';
import { IN_WORK, STARVED, TASK, WORKING } from '../floor/states.js';
import { BEGINS_PLAIN, LETS_GO } from '../floor/step-flags.js';
import type { Run } from '../run.js';
import { beginStep } from '../tasks/tasks.js';

/** How places are taken and left on the short way, by address. */

/** What stayed with the unit up to the step leaves it. */
export function comeTo(run: Run, unit: number, step: number): void {
  letGo(run, run.units.at(unit), run.shop.steps[step >> STEP_SHIFT].letsGo);
}

/** Nobody comes: the place is free. */
export function starve({ memory }: Run, place: number, buffer: number): void {
  const { ints } = memory;
  ints[place + P_UNIT] = NOWHERE;
  ints[place + P_NEXT_FREE] = ints[buffer + B_FREE_PLACE];
  ints[buffer + B_FREE_PLACE] = place;
  enterState(memory, place, STARVED, ints[buffer + B_CALENDAR]);
}

/** The unit takes the place and begins its step there. */
export function begin(run: Run, place: number, unit: number, step: number): void {
  const { memory } = run,
    { ints } = memory,
    flags = ints[step + S_FLAGS],
    id = (place - memory.places) >> PLACE_SHIFT;
  ints[place + P_UNIT] = unit;
  ints[unit + U_PLACE] = place;
  ints[unit + U_FIRST] = 0;
  if ((flags & LETS_GO) !== 0) comeTo(run, unit, step);
  if ((flags & BEGINS_PLAIN) === 0) {
    beginStep(run, run.places[id], run.units.at(unit), run.shop.steps[step >> STEP_SHIFT]);
    return;
  }
  const calendar = ints[step + S_CALENDAR],
    minutes = run.sampler.next(ints[step + S_WORK_DRAW]);
  ints[step + S_VISITS]++;
  ints[place + P_PASS] = 0;
  ints[place + P_PHASE] = IN_WORK;
  enterState(memory, place, WORKING, calendar);
  run.queue.push(calendar < 0 ? memory.now + minutes : memory.after(calendar, minutes), TASK, id);
}
