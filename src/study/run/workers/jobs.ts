import type { Observation } from '../../../measure/observe.js';
import type { Runner, RunnerOptions, ToRun } from '../runner.js';

/** A replication that is asked of some worker. */
export interface Job {
  /** The key of its variant, unlike that of any other runner. */
  readonly key: string;
  readonly variant: ToRun;
  readonly seed: string;
  readonly replication: number;
  /** Is told the share that is done. */
  readonly tell: (share: number) => void;
  readonly resolve: (observation: Observation) => void;
  readonly reject: (error: Error) => void;
  /** Whether it is still waited for. */
  readonly isWanted: () => boolean;
  /** Workers that died of it, or with it. */
  deaths: number;
}

/**
 * What asks for the replications of one replicator.
 * @param number tells it from all others
 */
export function runnerOf(
  number: number,
  { seed, signal, meter }: RunnerOptions,
  ask: (job: Job) => void,
): Runner {
  const wanted = new Set<Job>();
  const stop = (error: Error): void => {
    for (const job of wanted) job.reject(error);
  };
  const onAbort = (): void => {
    stop(signal?.reason as Error);
  };
  signal?.addEventListener('abort', onAbort);
  const observe: Runner['observe'] = (variant, replication) =>
    new Promise((resolve, reject) => {
      const slot = meter?.take(),
        tell = meter?.teller(slot);
      /** Whether it was waited for up to now. */
      const end = (): boolean => {
        if (!wanted.delete(job)) return false;
        meter?.give(slot);
        return true;
      };
      const job: Job = {
        key: `${number} ${variant.key}`,
        ...{ variant, seed, replication, deaths: 0 },
        tell: (share) => {
          if (wanted.has(job)) tell?.(share);
        },
        resolve: (observation) => {
          if (end()) resolve(observation);
        },
        reject: (error) => {
          if (end()) reject(error);
        },
        isWanted: () => wanted.has(job),
      };
      wanted.add(job);
      ask(job);
    });
  return {
    observe,
    close: () => {
      signal?.removeEventListener('abort', onAbort);
      stop(new Error('replicator: expected to be asked before it was closed, got it closed'));
      return Promise.resolve();
    },
  };
}
