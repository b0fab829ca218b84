import { simulate } from '../flow/engine.js';
import type { Model } from '../flow/model/model.js';
import { type Observation, observe } from '../measure/observe.js';
import { Plans } from './run/plans.js';

/**
 * One replication asked of a thread. The model comes along only if the thread has said that it does not know
 * the variant.
 */
export interface Question {
  readonly key: string;
  readonly seed: string;
  readonly replication: number;
  readonly model?: Model;
  readonly closely?: number | undefined;
}
export type Reply =
  | { readonly kind: 'observation'; readonly observation: Observation }
  | { readonly kind: 'unknown' }
  /** An error of the engine: running it again would not help. */
  | { readonly kind: 'fault'; readonly message: string };

const plans = new Plans();

/** Runs one replication in a worker thread. */
export default function replicate({ key, seed, replication, model, closely }: Question): Reply {
  try {
    const plan = plans.get(key) ?? (model === undefined ? undefined : plans.make(key, model, closely));
    return plan === undefined
      ? { kind: 'unknown' }
      : { kind: 'observation', observation: observe(simulate(plan, seed, replication), replication) };
  } catch (error) {
    return {
      kind: 'fault',
      message: error instanceof Error ? (error.stack ?? error.message) : String(error),
    };
  }
}
