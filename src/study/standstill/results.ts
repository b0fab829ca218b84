import type { Standstill } from '../../flow/gridlock/stuck.js';
import type { StandstillResult } from '../answer/gridlock.js';

/** Replications that stood still, the first of them in full, and what would help, by trial. */
export interface StandstillTold extends StandstillResult, Standstill {
  /** Numbers of all of them; ring, behind and held are those of the first. */
  readonly stood: readonly number[];
  /** Null where nothing was tried. */
  readonly help: HelpResult | null;
}

/** Changes that were tried against a standstill, in the same replications. */
export interface HelpResult {
  /** In the order in which the ring suggests them. */
  readonly tried: readonly TriedHelp[];
  /** Replications in which those were run that ended the first ones. */
  readonly builds: number;
  readonly sentence: string;
}
export interface TriedHelp {
  /** As a planner reads it: `one more of dolly`. */
  readonly what: string;
  /** Replications that do not stand still with it, of so many that were run. */
  readonly ends: number;
  readonly of: number;
}
