import type { StudyOptions } from '../asked.js';
import type { ReachGoal } from './results.js';

export interface ReachOptions extends StudyOptions {
  readonly goal: ReachGoal;
  /** The day of the order, ISO; undefined: every change is there from the first day on. */
  readonly ordered?: string | undefined;
  /** No week that begins before this day, ISO, is judged. */
  readonly by?: string | undefined;
  /** Money, once, and changes, at most. */
  readonly budget?: number | undefined;
  readonly atMost?: number | undefined;
  /** Fresh replications by which builds are told. */
  readonly replications: number;
}
