import Tinypool from 'tinypool';
import { simulate } from '../flow/engine.js';
import type { Model } from '../flow/model.js';
import { prepare } from '../flow/plan.js';
import { observe } from '../measure/observe.js';
import type { Observation } from '../measure/observation.js';
import { tuneFor } from './tune.js';

/** What a worker thread is given once, when it starts. */
export interface WorkerJob { readonly model: Model; readonly seed: string }

const { model, seed } = Tinypool.workerData as WorkerJob;
tuneFor(model);
const plan = prepare(model);

/** Runs one replication in a worker thread. */
export default function replicate(replication: number): Observation {
  return observe(simulate(plan, seed, replication), replication);
}
