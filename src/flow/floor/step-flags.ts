import type { Model } from '../model/model.js';
import { HOLD_NONE } from '../model/quality.js';
import { REWORK_BOTH } from '../model/steps.js';
import type { Step } from './step.js';

/** What a step has besides plain work; a step with none of it takes the short way, see `short-way.ts`. */
export const HAS_NEEDS = 1 << 0,
  HAS_QUALITY = 1 << 1,
  HAS_OFF = 1 << 2,
  HAS_PATH = 1 << 3,
  HAS_PASSES = 1 << 4,
  HAS_FACTOR = 1 << 5,
  IS_INSPECTION = 1 << 6,
  IS_TARGET = 1 << 7,
  HAS_PROCESS = 1 << 8,
  AT_LOT = 1 << 9,
  HAS_CHANGEOVER = 1 << 10,
  ONE_SHIFT = 1 << 11,
  LEARNS = 1 << 12,
  HOLDS = 1 << 13,
  ATTENDED_END = 1 << 14,
  IS_COUNTED = 1 << 15,
  /** At a station that may go down; at one of a pulse line. */
  CAN_FAIL = 1 << 16,
  PULSED = 1 << 17,
  /** A group of steps side by side; one of them. */
  IS_GROUP = 1 << 18,
  IS_SIDE = 1 << 19,
  /** Begins with nothing but work; ends with nothing but a move in one site. */
  BEGINS_PLAIN = 1 << 20,
  ENDS_PLAIN = 1 << 21,
  /** On a way back to another site, behind it: the lane or its arrival bank. */
  ON_WAY_BACK = 1 << 22,
  /** Of those with changeovers: they pass by themselves. */
  CHANGES_ALONE = 1 << 23,
  /** Its parts are in the kit with which a sub-assembly begins; they are claimed ahead of its station. */
  IN_KIT = 1 << 24,
  ASKS_AHEAD = 1 << 25,
  /** Some equipment is needed for a part of the work. */
  HAS_PARTS = 1 << 26,
  /** Claims some people of one crew and nothing else, and then works. */
  ONE_CREW = 1 << 27,
  /** At a station whose places and spaces are given away first come, first served, see `short-way.ts`. */
  COMES_PLAINLY = 1 << 28,
  /** Something that stayed with a unit may leave it when it comes there. */
  LETS_GO = 1 << 29;

/** Flags of steps that do not begin, or not end, by the short way. */
const BEGINS_LONG =
    HAS_NEEDS | AT_LOT | HAS_CHANGEOVER | HAS_FACTOR | LEARNS | ONE_SHIFT | HOLDS | CAN_FAIL | PULSED,
  ENDS_LONG =
    HAS_NEEDS |
    HAS_QUALITY |
    HAS_OFF |
    HAS_PASSES |
    HAS_PROCESS |
    AT_LOT |
    HAS_CHANGEOVER |
    IS_COUNTED |
    CAN_FAIL |
    PULSED |
    ON_WAY_BACK,
  /** Flags of steps that claim more than people, or do something else first. */
  CLAIMS_MORE =
    AT_LOT | HAS_CHANGEOVER | ONE_SHIFT | HOLDS | CAN_FAIL | IS_GROUP | IS_SIDE | HAS_PARTS | ASKS_AHEAD;

/** Flags of steps whose stations choose who comes, or when. */
const COMES_LONG = AT_LOT | HAS_CHANGEOVER | CAN_FAIL | PULSED;

/** Sets the flags of all steps; what they claim and their stations have to be known. */
export function setFlags(model: Model, steps: readonly Step[]): void {
  for (const step of steps) step.flags = flagsOf(model, step);
  for (const { group, flags } of steps) if (group !== null) group.flags |= IS_GROUP | (flags & HAS_QUALITY);
  markTargets(model, steps);
  const plain = steps.map(plainFlags);
  for (const step of steps) step.flags |= plain[step.id];
  const asking = new Set(
    steps.filter(({ flags }) => (flags & ASKS_AHEAD) !== 0).map(({ station }) => station),
  );
  for (const step of steps) {
    const { flags, station } = step;
    if (claimsOneCrew(step)) step.flags |= ONE_CREW;
    if (station !== null && (flags & COMES_LONG) === 0 && !asking.has(station)) step.flags |= COMES_PLAINLY;
  }
}

function flagsOf({ steps, overtime, quality, stations }: Model, step: Step): number {
  const { id, asked, group, station } = step,
    { needs, ownParts, companions } = asked,
    isSingle = group === null,
    isFilled = (start: Int32Array): boolean => start[id + 1] > start[id];
  let flags = isSingle ? 0 : IS_SIDE;
  if (steps.onTo[id] >= 0) flags |= ON_WAY_BACK;
  if (steps.asksAhead[id] === 1) flags |= ASKS_AHEAD;
  if (needs.length > 0 || asked.teamBits !== 0 || (isSingle && (ownParts !== 0 || companions.length > 0)))
    flags |= HAS_NEEDS;
  if (needs.some(({ bit }) => bit !== 0)) flags |= HAS_PARTS;
  if (isFilled(steps.createStart)) flags |= HAS_QUALITY;
  if (isFilled(steps.findStart)) flags |= HAS_QUALITY | IS_INSPECTION;
  if (isFilled(steps.offStart)) flags |= HAS_OFF;
  if (isFilled(steps.whenStart) || steps.sampleN[id] > 0 || steps.rework[id] !== REWORK_BOTH)
    flags |= HAS_PATH;
  if (step.passes > 1 || step.settleDraw >= 0) flags |= HAS_PASSES;
  if (isFilled(steps.factorStart)) flags |= HAS_FACTOR;
  if (steps.learnExponent[id] !== 0) flags |= LEARNS;
  if (step.processDraw >= 0) flags |= HAS_PROCESS;
  // Whether a unit passes it over, and that it goes on, is seen to by the rules of the path and of quality.
  if (quality.hold[id] !== HOLD_NONE) flags |= HOLDS | HAS_PATH | HAS_QUALITY;
  if (steps.oneShift[id] === 1 && step.workCalendar >= 0) flags |= ONE_SHIFT;
  if (steps.attendedEnd[id] === 1 && step.workCalendar >= 0 && step.processDraw >= 0) flags |= ATTENDED_END;
  if (overtime.some((rule) => rule.step === id)) flags |= IS_COUNTED;
  if (station === null) return flags;
  if (station.lotMost > 0) flags |= AT_LOT;
  if (station.line !== null) flags |= PULSED;
  // One of several steps side by side has no place of its own to be set up or to fail.
  if (station.isSetUp && isSingle)
    flags |= HAS_CHANGEOVER | (stations.changeoverAlone[station.id] === 1 ? CHANGES_ALONE : 0);
  if (station.equipment.length > 0 && isSingle) flags |= CAN_FAIL;
  return flags;
}

/** A step mends the items for which a unit is sent back to it; a failed test leaves no item. */
function markTargets({ steps: { findSlot, findThen }, thens }: Model, steps: readonly Step[]): void {
  findSlot.forEach((slot, find) => {
    const target = thens.target[findThen[find]];
    if (slot >= 0 && target >= 0) steps[target].flags |= HAS_QUALITY | IS_TARGET;
  });
}

function plainFlags({ flags, workDraw, next, station, buffer }: Step): number {
  const begins = workDraw >= 0 && (flags & BEGINS_LONG) === 0;
  const ends =
    (flags & ENDS_LONG) === 0 &&
    next !== null &&
    next.station !== null &&
    next.station !== station &&
    next.buffer.location === buffer.location &&
    (next.flags & (HAS_PATH | AT_LOT | HAS_CHANGEOVER | PULSED)) === 0;
  return (begins ? BEGINS_PLAIN : 0) | (ends ? ENDS_PLAIN : 0);
}

function claimsOneCrew({ flags, asked: { needs, teamBits, ownParts }, workDraw }: Step): boolean {
  return (
    (flags & CLAIMS_MORE) === 0 &&
    workDraw >= 0 &&
    needs.length === 1 &&
    needs[0].resource.isCrew &&
    teamBits === 0 &&
    ownParts === 0
  );
}
