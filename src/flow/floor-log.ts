import { simulate } from './engine.js';
import { FloorWatch } from './floor-watch.js';
import type { Happening } from './model/happening.js';
import type { Plan } from './plan.js';
import type { Run } from './run.js';

/** The floor log of one replication: what happened to each unit and sub-assembly, in order of time. */
export interface FloorLog {
  readonly happenings: readonly Happening[];
  readonly run: Run;
}

/**
 * Runs a replication and writes down what happens on its floor. It looks after each event, as `trace.ts`
 * does, and is told what inspections find and who leaves, so the run is the same to the last bit. A start
 * outside the hours of the work is that of the first working minute after it.
 */
export function floorLog(plan: Plan, seed: string, replication: number): FloorLog {
  let log: FloorWatch | null = null;
  const run = simulate(plan, seed, replication, {
    watch: () => {
      log = null;
      return (each) => {
        (log ??= new FloorWatch(each)).look();
      };
    },
  });
  // The last event is not followed by another look.
  const kept = (log as FloorWatch | null) ?? new FloorWatch(run);
  kept.look();
  return { happenings: kept.happenings, run };
}
