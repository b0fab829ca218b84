import { cross, enterBuckets, finishObservation, nextBoundary } from './accounts/observed-time.js';
import { audit } from './audit.js';
import { match } from './claims/claims.js';
import { beginSupplies } from './claims/supplies.js';
import { beginStages, changeStage } from './dated/stages.js';
import { dispatch } from './dispatch.js';
import { PLACE_SHIFT } from './floor/memory.js';
import { Alive } from './gridlock/alive.js';
import { coreOf } from './gridlock/core.js';
import { type Look, momentOf, STOP } from './gridlock/moment.js';
import { isStill } from './gridlock/still.js';
import { standstillOf } from './gridlock/stuck.js';
import { beginShifts } from './interruptions/crews.js';
import { beginDisruptions } from './interruptions/failures.js';
import { beginRules } from './interruptions/overtime.js';
import type { Plan } from './plan.js';
import { Run } from './run.js';
import { type Tell, telling } from './share-done.js';
import { startIncompleteLot, startLot } from './tasks/lots.js';
import { beginStep } from './tasks/tasks.js';
import { endPhase } from './traffic/complete.js';
import { admit, feed } from './traffic/feeders.js';
import { leaveIncomplete, serve } from './traffic/lanes.js';
import { fill } from './traffic/move.js';
import { placeUnitsAtStart } from './traffic/opening.js';
import { pulse } from './traffic/pulse-lines.js';
import { beginRelease, refillSource } from './traffic/release.js';
import { goShortWay } from './traffic/short-way.js';

/** How a run ended: all units are out; its end came; or nothing could move any more (rule 16). */
export const FINISHED = 0,
  ENDED = 1,
  GRIDLOCK = 2;

/** Called ahead of each event, when all that followed from the one before is done. */
export type Watch = (run: Run) => void;

/**
 * Runs one replication of a model to its end, or to the moment from which some units can never go on (rule
 * 16), and audits it. Same plan, seed and replication: same result bits.
 * @param watch makes what watches the run; it may be played more than once, and the last one counts
 * @param tell is told how far the first play is
 */
export function simulate(
  plan: Plan,
  seed: string,
  replication: number,
  { watch, tell }: { readonly watch?: () => Watch; readonly tell?: Tell | undefined } = {},
): Run {
  const play = (look: Look | null, watched: boolean): Run => {
    const run = new Run(plan, seed, replication);
    playOn(run, look, watched ? watch?.() : undefined);
    return run;
  };
  let run = play(tell === undefined ? null : telling(tell), true);
  if (run.outcome !== FINISHED) {
    const moment = momentOf(run, (look) => play(look, false));
    if (moment !== null) {
      run = play(moment.look, true);
      run.outcome = GRIDLOCK;
      run.standstill = standstillOf(new Alive(run), moment.ring(run));
    } else if (run.outcome === GRIDLOCK) tellWhole(run);
  }
  run.model = run.whole;
  finishObservation(run);
  audit(run);
  return run;
}

/** Plays a replication from its start to its end, whoever stands still in it. */
export function playOn(run: Run, look: Look | null = null, watch?: Watch): void {
  if (watch !== undefined) watchEvents(run, watch);
  beginStages(run);
  enterBuckets(run);
  for (const route of run.shop.routes) run.listFeed(route);
  beginSupplies(run);
  beginShifts(run);
  beginRules(run);
  beginDisruptions(run);
  placeUnitsAtStart(run);
  beginRelease(run);
  drain(run);
  run.outcome = loop(run, look);
}

/** The whole build stands, for a reason that `Alive` leaves open. */
function tellWhole(run: Run): void {
  const alive = new Alive(run, true);
  run.standstill = standstillOf(alive, coreOf(alive, alive.floor.units[0]));
}

/**
 * The loop asks the queue once ahead of each event: whoever watches stands there, and other runs pay nothing.
 */
function watchEvents(run: Run, watch: Watch): void {
  const { queue } = run,
    ready = queue.ready.bind(queue);
  queue.ready = () => {
    watch(run);
    return ready();
  };
}

function loop(run: Run, look: Look | null): number {
  const {
      model: { programme, horizon },
      queue,
      memory,
    } = run,
    end = Math.min(programme.end, horizon),
    placeCount = run.places.length;
  const mayBeStill = run.disruptions.sourceCount + run.shop.supplies.length + run.idleEvents > 0;
  let pause = look === null ? Infinity : -Infinity,
    boundary = Math.min(nextBoundary(run, end), pause);
  for (;;) {
    const still = mayBeStill && isStill(run) && !waitsForChange(run),
      time = !still && queue.ready() ? queue.times[0] : Infinity;
    if (time <= boundary && time < Infinity) {
      const source = queue.pop();
      memory.now = time;
      // Tasks come first among the sources: theirs is the place's id.
      if (source >= placeCount) dispatch(run, queue.kindOf(source), queue.idOf(source));
      else if (!goShortWay(run, memory.places + (source << PLACE_SHIFT))) endPhase(run, run.places[source]);
      if (!run.pending) continue;
      drain(run);
      if (run.gone >= programme.quantity) return FINISHED;
    } else if ((still || queue.size === 0) && leaveIncompletes(run)) {
      continue;
    } else if (
      (still || (queue.size === 0 && (!mayBeStill || end === Infinity))) &&
      (run.changesAt === Infinity || run.units.alive === 0)
    ) {
      // Otherwise somebody waits for a shift behind the end, and the run goes on to it.
      return run.units.alive === 0 ? FINISHED : GRIDLOCK;
    } else {
      if (boundary === pause) {
        pause = look!(run, time);
        if (pause === STOP) return GRIDLOCK;
      } else {
        memory.now = boundary;
        if (boundary >= end) return ENDED;
        cross(run);
        if (run.now === run.changesAt) {
          changeStage(run);
          drain(run);
          if (run.gone >= programme.quantity) return FINISHED;
        }
      }
      boundary = Math.min(nextBoundary(run, end), pause);
    }
  }
}

/**
 * Nothing moves, but a change is ahead: lots and trucks go with what they have, and the run goes on to it.
 */
function waitsForChange(run: Run): boolean {
  if (run.changesAt < Infinity) leaveIncompletes(run);
  return run.changesAt < Infinity;
}

/**
 * Follows every consequence of an event that happens at the same time: room first, then pulse lines, tasks,
 * lots, trucks, needs, feeders.
 */
function drain(run: Run): void {
  const { toFill, toBegin, granted, toStartLot, toServe, toMatch, toFeed, toPulse } = run;
  for (;;) {
    if (toFill.length > 0) fill(run, toFill.pop()!);
    else if (toPulse.length > 0) pulse(run, toPulse.pop()!);
    else if (toBegin.length > 0) {
      const side = toBegin.shift()!,
        unit = side.unit!;
      beginStep(run, side, unit, unit.step);
    } else if (granted.length > 0) admit(run, granted.pop()!);
    else if (toStartLot.length > 0) startLot(run, toStartLot.pop()!);
    else if (toServe.length > 0) serve(run, toServe.pop()!);
    else if (toMatch.length > 0) match(run, toMatch.pop()!);
    else if (toFeed.length > 0) feed(run, toFeed.pop()!);
    else if (run.sourceEntered) refillSource(run);
    else {
      run.pending = false;
      return;
    }
  }
}

/** When nothing can happen any more, lots and trucks that wait go with what they have. True if one did. */
function leaveIncompletes(run: Run): boolean {
  let left = false;
  for (const lane of run.shop.lanes) left = leaveIncomplete(run, lane) || left;
  for (const station of run.shop.stations) left = startIncompleteLot(run, station) || left;
  if (left) drain(run);
  return left;
}
