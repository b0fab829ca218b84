import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Meter } from './meter.js';

/** What is run; `key` tells it from all others of its runner. */
export interface ToRun {
  readonly key: string;
  readonly model: Model;
  readonly closely?: number | undefined;
}

/** What runs replications: threads of this process, or processes wherever they are. */
export interface Runner {
  /** One that is lost with its worker is run again; rejects where that will not do, and with a fault. */
  readonly observe: (variant: ToRun, replication: number) => Promise<Observation>;
  /** Nothing more is asked of it. */
  readonly close: () => Promise<void>;
}

export interface RunnerOptions {
  readonly seed: string;
  /** Threads or processes; one thread: none beside this one. */
  readonly workers: number;
  /** What goes on is then rejected with its reason. */
  readonly signal?: AbortSignal | undefined;
  /** Is told how far each replication under way is. */
  readonly meter?: Meter | undefined;
}

/** A replication whose worker died is run again so often. */
export const MOST_DEATHS = 3;
