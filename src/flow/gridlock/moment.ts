import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { Alive } from './alive.js';
import { coreOf } from './core.js';

/**
 * Called when all events up to a pause are over, first at time 0. `next` is the time of the next event.
 * Answers with the next pause, or `STOP`.
 */
export type Look = (run: Run, next: number) => number;
export const STOP = -Infinity;

/** Plays the replication again from its start, the same to the last bit. */
export type Play = (look: Look) => Run;

/** The moment at which a standstill began. `look` plays the replication up to it, once. */
export interface Moment {
  readonly look: Look;
  /** Those of the ring, in the run at that moment. */
  readonly ring: (run: Run) => Unit[];
}

/** Pauses in one search of a span of time. */
const PARTS = 128;

/**
 * When the units that hold the others up for ever began to: null if each unit may still go on. Whoever can
 * never go on at one time never can later, so the moment is found by looking ever closer, in the replication
 * played anew: a replication in which nothing stands still is looked at once, at its end. Sub-assemblies that
 * can never go on are no standstill as long as every unit can; it then began when they did.
 */
export function momentOf(end: Run, play: Play): Moment | null {
  if (stoppedUnit(new Alive(end)) === null) return null;
  const found = close(play, end.now, (run) => stoppedUnit(new Alive(run)) !== null),
    alive = new Alive(found.run),
    ring = coreOf(alive, stoppedUnit(alive)!).map(({ at, number }) => ({ at, number })),
    ringIn = ({ units }: Run): Unit[] => ring.map(({ at }) => units.at(at));
  const holds = (run: Run): boolean => {
    const { dead } = new Alive(run);
    return ring.every(({ at, number }) => dead.some((unit) => unit.at === at && unit.number === number));
  };
  const hasUnit = ringIn(found.run).some(({ step }) => step.route.isMain),
    { from } = hasUnit ? found : close(play, found.to, holds);
  let isClose = false;
  return {
    ring: ringIn,
    look: (run, next) => {
      if (isClose) return holds(run) ? STOP : next;
      isClose = true;
      return from;
    },
  };
}

/** The first of the units, no sub-assembly, that can never go on. */
const stoppedUnit = ({ dead }: Alive): Unit | null =>
  dead.reduce<Unit | null>(
    (first, unit) =>
      unit.step.route.isMain && (first === null || unit.number < first.number) ? unit : first,
    null,
  );

interface Span {
  /** What is looked for is not so yet at the first time, and so at the second, at which the run stands. */
  readonly from: number;
  readonly to: number;
  readonly run: Run;
}

/** A short span of time in which something comes to be that then stays. */
function close(play: Play, end: number, is: (run: Run) => boolean): Span {
  const wide = search(play, 0, end, is);
  return search(play, wide.from, wide.to, is);
}

function search(play: Play, start: number, end: number, is: (run: Run) => boolean): Span {
  let part = 0,
    from = start,
    to = end;
  const at = (n: number): number => start + ((end - start) * n) / PARTS;
  const run = play((each) => {
    if (part > 0 && is(each)) {
      to = at(part);
      return STOP;
    }
    if (part > 0) from = at(part);
    return part++ < PARTS ? at(part) : Infinity;
  });
  return { from, to, run };
}
