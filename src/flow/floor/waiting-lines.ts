import {
  B_REWORK_SPACES,
  B_SHUT_OUT,
  B_SPACES,
  B_WAITING,
  BF_AREA,
  BF_SHIFT,
  BF_SINCE,
  BUFFER_SHIFT,
  HEAD,
  LENGTH,
  LEVELS,
  LEVELS_SHIFT,
  type Memory,
  NOWHERE,
  SENT_BACK,
  SHUT,
  SHUT_SENT_BACK,
  TAIL,
  TOGETHER,
  U_FIRST,
  U_NEXT,
  U_NUMBER,
  USUAL,
} from './memory.js';

/**
 * The room ahead of a station, or the bank of a lane, by address: units in its spaces, and those that found
 * no room and stay where they are (blocking after service). Order of rule 1: units sent back first, then
 * first come first served, and at one instant the lower build number.
 */

/** Whether a unit that comes now may take a space: there is one, and nobody waits for it already. */
export function takesIn({ ints }: Memory, buffer: number, unit: number): boolean {
  if (ints[buffer + B_REWORK_SPACES] < 0)
    return ints[buffer + B_WAITING] < ints[buffer + B_SPACES] && ints[buffer + B_SHUT_OUT] === 0;
  return ints[unit + U_FIRST] === 1
    ? ints[buffer + SENT_BACK + LENGTH] < ints[buffer + B_REWORK_SPACES] &&
        ints[buffer + SHUT_SENT_BACK + LENGTH] === 0
    : ints[buffer + USUAL + LENGTH] < ints[buffer + B_SPACES] && ints[buffer + SHUT + LENGTH] === 0;
}

export function joinSpaces(memory: Memory, buffer: number, unit: number): void {
  const { ints } = memory;
  settleLevel(memory, buffer);
  ints[buffer + B_WAITING]++;
  joinLine(memory, buffer, ints[unit + U_FIRST] === 0 ? USUAL : SENT_BACK, unit);
}

/** The first in order, who stays; NOWHERE if nobody is in the spaces. */
export function firstInSpaces({ ints }: Memory, buffer: number): number {
  const waiting = ints[buffer + B_WAITING];
  return waiting === 0
    ? NOWHERE
    : ints[buffer + (waiting === ints[buffer + USUAL + LENGTH] ? USUAL : SENT_BACK) + HEAD];
}

/** The first in order, out of the spaces; there must be one. */
export function takeFromSpaces(memory: Memory, buffer: number): number {
  const { ints } = memory;
  settleLevel(memory, buffer);
  return takeFirst(
    memory,
    buffer,
    ints[buffer + B_WAITING]-- === ints[buffer + USUAL + LENGTH] ? USUAL : SENT_BACK,
  );
}

/** No room: the unit waits where it is. */
export function joinShut(memory: Memory, buffer: number, unit: number): void {
  memory.ints[buffer + B_SHUT_OUT]++;
  joinLine(memory, buffer, memory.ints[unit + U_FIRST] === 0 ? SHUT : SHUT_SENT_BACK, unit);
}

/** The first of those without room, who stays; there must be one. */
export function firstShut({ ints }: Memory, buffer: number): number {
  return ints[
    buffer + (ints[buffer + B_SHUT_OUT] === ints[buffer + SHUT + LENGTH] ? SHUT : SHUT_SENT_BACK) + HEAD
  ];
}

/** The first of those without room for whom there is a space now, who stays; NOWHERE if there is none. */
export function firstShutThatFits({ ints }: Memory, buffer: number): number {
  if (ints[buffer + B_SHUT_OUT] === 0) return NOWHERE;
  const sentBack = ints[buffer + SHUT_SENT_BACK + LENGTH] > 0;
  if (ints[buffer + B_REWORK_SPACES] < 0)
    return ints[buffer + B_WAITING] < ints[buffer + B_SPACES]
      ? ints[buffer + (sentBack ? SHUT_SENT_BACK : SHUT) + HEAD]
      : NOWHERE;
  if (sentBack && ints[buffer + SENT_BACK + LENGTH] < ints[buffer + B_REWORK_SPACES])
    return ints[buffer + SHUT_SENT_BACK + HEAD];
  return ints[buffer + SHUT + LENGTH] > 0 && ints[buffer + USUAL + LENGTH] < ints[buffer + B_SPACES]
    ? ints[buffer + SHUT + HEAD]
    : NOWHERE;
}

/** The first of its line without room, out of it. */
export function takeShut(memory: Memory, buffer: number, unit: number): number {
  const { ints } = memory;
  ints[buffer + B_SHUT_OUT]--;
  return takeFirst(memory, buffer, ints[unit + U_FIRST] === 0 ? SHUT : SHUT_SENT_BACK);
}

/** A unit anywhere in a line, out of it; its place there is found by walking. */
export function takeOut(memory: Memory, buffer: number, line: number, unit: number): void {
  const { ints } = memory,
    at = buffer + line;
  if (line === SHUT || line === SHUT_SENT_BACK) ints[buffer + B_SHUT_OUT]--;
  else {
    settleLevel(memory, buffer);
    ints[buffer + B_WAITING]--;
  }
  let before = NOWHERE,
    ahead = 0;
  for (let u = ints[at + HEAD]; u !== unit; u = ints[u + U_NEXT]) {
    before = u;
    ahead++;
  }
  if (ahead >= ints[at + LENGTH] - ints[at + TOGETHER]) ints[at + TOGETHER]--;
  const after = ints[unit + U_NEXT];
  if (before === NOWHERE) ints[at + HEAD] = after;
  else ints[before + U_NEXT] = after;
  if (after === NOWHERE) ints[at + TAIL] = before;
  ints[at + LENGTH]--;
}

/** Books the time at the present level. */
export function settleLevel(memory: Memory, buffer: number): void {
  const { floats, now } = memory,
    record = memory.bufferFloats + ((buffer - memory.buffers) >> (BUFFER_SHIFT - BF_SHIFT)),
    elapsed = now - floats[record + BF_SINCE];
  if (elapsed === 0) return;
  const level = memory.ints[buffer + B_WAITING];
  floats[record + BF_SINCE] = now;
  floats[record + BF_AREA] += level * elapsed;
  floats[
    memory.levels +
      ((buffer - memory.buffers) << (LEVELS_SHIFT - BUFFER_SHIFT)) +
      (level < LEVELS ? level : LEVELS - 1)
  ] += elapsed;
}

function joinLine(memory: Memory, buffer: number, line: number, unit: number): void {
  const { ints, floats, now } = memory,
    at = buffer + line,
    joinedAt = memory.bufferFloats + ((buffer - memory.buffers) >> (BUFFER_SHIFT - BF_SHIFT)) + (line >> 2);
  if (ints[at + LENGTH]++ === 0) {
    ints[at + HEAD] = unit;
    ints[at + TOGETHER] = 1;
  } else {
    ints[at + TOGETHER] = floats[joinedAt] === now ? ints[at + TOGETHER] + 1 : 1;
    if (ints[at + TOGETHER] > 1 && ints[ints[at + TAIL] + U_NUMBER] > ints[unit + U_NUMBER]) {
      insertByNumber(memory, at, unit);
      return;
    }
    ints[ints[at + TAIL] + U_NEXT] = unit;
  }
  floats[joinedAt] = now;
  ints[unit + U_NEXT] = NOWHERE;
  ints[at + TAIL] = unit;
}

/** Ahead of those who came at this same instant and have a higher number; the last one has. */
function insertByNumber({ ints }: Memory, at: number, unit: number): void {
  let before = NOWHERE,
    after = ints[at + HEAD];
  // Length and together count the unit itself.
  for (let earlier = ints[at + LENGTH] - ints[at + TOGETHER]; earlier > 0; earlier--) {
    before = after;
    after = ints[after + U_NEXT];
  }
  while (ints[after + U_NUMBER] <= ints[unit + U_NUMBER]) {
    before = after;
    after = ints[after + U_NEXT];
  }
  ints[unit + U_NEXT] = after;
  if (before === NOWHERE) ints[at + HEAD] = unit;
  else ints[before + U_NEXT] = unit;
}

function takeFirst({ ints }: Memory, buffer: number, line: number): number {
  const at = buffer + line,
    unit = ints[at + HEAD];
  ints[at + HEAD] = ints[unit + U_NEXT];
  ints[at + LENGTH]--;
  return unit;
}
