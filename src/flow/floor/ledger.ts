import {
  ACCOUNT_SHIFT,
  ACTIVE_MINUTES,
  ACTIVE_PERIODS,
  ACTIVE_SINCE,
  B_ACTIVE,
  B_CALENDAR,
  B_PLACES,
  BUFFER_SHIFT,
  type Memory,
  P_BUFFER,
  P_CALENDAR,
  P_STATE,
  PLACE_SHIFT,
} from './memory.js';
import { isActive, OFF_SHIFT } from './states.js';

/**
 * The ledger of places: each minute of a place is booked in its station's account, under the state it was in;
 * what falls outside the calendar that governs the state is off shift.
 */

/** The place goes into a state, governed by a calendar (-1: always). */
export function enterState(memory: Memory, place: number, state: number, calendar: number): void {
  const { ints } = memory,
    old = ints[place + P_STATE];
  if (old === state && ints[place + P_CALENDAR] === calendar) return;
  settlePlace(memory, place);
  ints[place + P_STATE] = state;
  ints[place + P_CALENDAR] = calendar;
  const isNow = isActive(state);
  if (isNow !== isActive(old)) countActive(memory, ints[place + P_BUFFER], isNow);
}

/** Books the time of the present state up to now. */
export function settlePlace(memory: Memory, place: number): void {
  const { ints, floats, now } = memory,
    id = (place - memory.places) >> PLACE_SHIFT,
    calendar = ints[place + P_CALENDAR];
  const elapsed = now - floats[id];
  if (elapsed === 0) return;
  const account =
    memory.accounts + ((ints[place + P_BUFFER] - memory.buffers) >> (BUFFER_SHIFT - ACCOUNT_SHIFT));
  if (calendar < 0) floats[account + ints[place + P_STATE]] += elapsed;
  else {
    const worked = memory.calendars[calendar].worked(floats[id], now);
    floats[account + ints[place + P_STATE]] += worked;
    floats[account + OFF_SHIFT] += elapsed - worked;
  }
  floats[id] = now;
}

/** A station is active while all its places are. */
function countActive(memory: Memory, buffer: number, more: boolean): void {
  const { ints, floats } = memory,
    places = ints[buffer + B_PLACES],
    before = ints[buffer + B_ACTIVE];
  ints[buffer + B_ACTIVE] = more ? before + 1 : before - 1;
  if (more && before === places - 1) {
    floats[memory.accounts + ((buffer - memory.buffers) >> (BUFFER_SHIFT - ACCOUNT_SHIFT)) + ACTIVE_SINCE] =
      memory.now;
    memory.watch?.begin((buffer - memory.buffers) >> BUFFER_SHIFT);
  } else if (!more && before === places) finishActive(memory, buffer);
}

/**
 * Ends the active period of a station, if there is one; it is counted in minutes of the station's calendar.
 */
export function finishActive(memory: Memory, buffer: number): void {
  const { floats, now } = memory,
    account = memory.accounts + ((buffer - memory.buffers) >> (BUFFER_SHIFT - ACCOUNT_SHIFT)),
    since = floats[account + ACTIVE_SINCE];
  if (since < 0) return;
  memory.watch?.end((buffer - memory.buffers) >> BUFFER_SHIFT);
  const calendar = memory.ints[buffer + B_CALENDAR],
    minutes = calendar < 0 ? now - since : memory.calendars[calendar].worked(since, now);
  floats[account + ACTIVE_SINCE] = -1;
  if (minutes <= 0) return;
  floats[account + ACTIVE_PERIODS]++;
  floats[account + ACTIVE_MINUTES] += minutes;
}
