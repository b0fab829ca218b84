import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Journal } from './journal.js';
import { Replicator, type ReplicatorOptions } from './replicator.js';

/**
 * Where a journal keeps whole observations beside what else is read: no digest of a scenario, which all other
 * variants have.
 */
const KEY = 'base';

/**
 * Replications 1 to `to` of the scenario as it is, whole: they say in which time a study counts, and so what
 * it reads of all others, of which a journal keeps no more than that.
 */
export async function baseRuns(
  model: Model,
  to: number,
  { journal, ...options }: Omit<ReplicatorOptions<unknown>, 'read'>,
): Promise<Observation[]> {
  const replicator = new Replicator<Observation>({
    ...options,
    read: (observation) => observation,
    journal: journal as Journal<Observation> | undefined,
  });
  const [seen] = (await replicator.run([{ key: KEY, model }], 1, to).finally(() => replicator.close())) as [
    Observation[],
  ];
  return seen;
}
