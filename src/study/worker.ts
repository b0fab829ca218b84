import { simulate } from '../flow/engine.js';
import type { Model } from '../flow/model/model.js';
import { type Observation, observe } from '../measure/observe.js';
import { Meter } from './run/meter.js';
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
  /** Where it tells how far the replication is; nowhere if left out. */
  readonly meter?: SharedArrayBuffer | undefined;
  readonly slot?: number | undefined;
}
export type Reply =
  | { readonly kind: 'observation'; readonly observation: Observation }
  | { readonly kind: 'unknown' }
  /** An error of the engine: running it again would not help. */
  | { readonly kind: 'fault'; readonly message: string };

const plans = new Plans();

/** Runs one replication in a worker thread. */
export default function replicate(question: Question): Reply {
  const { key, seed, replication, model, closely, meter, slot } = question;
  try {
    const plan = plans.get(key) ?? (model === undefined ? undefined : plans.make(key, model, closely));
    if (plan === undefined) return { kind: 'unknown' };
    const tell = meter === undefined ? undefined : new Meter(meter).teller(slot);
    return {
      kind: 'observation',
      observation: observe(simulate(plan, seed, replication, { tell }), replication),
    };
  } catch (error) {
    return {
      kind: 'fault',
      message: error instanceof Error ? (error.stack ?? error.message) : String(error),
    };
  }
}
