import type { LogRead } from '../../records/log/cleaned.js';
import type { FloorEvent } from '../../records/log/event.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Judged } from './judge.js';
import type { Measure } from './seen/measures.js';
import type { MostPeople, PeopleSeen } from './seen/people-compared.js';
import type { LogWatch } from './seen/watch.js';
import type { RealLog } from './start/log-read.js';
import type { FirstLook, Period } from './start/period.js';

/** A log that can be read more than once; events come in order of time. */
export interface LogSource {
  readonly file: string;
  /** Null where it was never a file. */
  readonly read: (take: (events: readonly FloorEvent[]) => void) => Promise<LogRead | null>;
}

export interface ValidateOptions {
  readonly scenario: Scenario;
  readonly file: string;
  readonly log: LogSource;
  readonly seed: string;
  /** At least 10. */
  readonly replications: number;
  readonly level?: number | undefined;
  /** First and last day, ISO dates; by default what the log allows. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly signal?: AbortSignal | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
}

/** What is kept of one log. */
export interface OneLog {
  readonly measures: readonly Measure[];
  readonly people: readonly PeopleSeen[];
  readonly watch: LogWatch;
}

/** The real log beside the simulated ones. */
export interface SideBySide {
  readonly real: RealLog;
  readonly period: Period;
  readonly read: LogRead | null;
  readonly kinds: FirstLook;
  readonly simulated: readonly OneLog[];
  readonly gridlocks: number;
  readonly judged: readonly Judged[];
  readonly most: ReadonlyMap<Measure, MostPeople>;
}
