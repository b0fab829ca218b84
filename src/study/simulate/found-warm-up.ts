import type { Scenario } from '../../scenario/types/scenario.js';
import { Replicator, type ReplicatorOptions } from '../run/replicator.js';
import { firstPilot, pilotCut, pilotModel, TIMES_CUT } from './pilot.js';

export interface FindWarmUpOptions extends Pick<ReplicatorOptions, 'workers' | 'through' | 'signal'> {
  readonly scenario: Scenario;
  readonly seed: string;
}

/** Pooled replications of the pilot, and so many times the length it is made at most. */
const REPLICATIONS = 40,
  LONGEST = 32;

/**
 * The warm-up of a steady-state run, minutes: three times where MSER-5 cuts the mean of a pilot that is long
 * enough for it. 0 where a replication stopped early, which the run itself will tell.
 * @throws RangeError `programme: expected ..` where no pilot is long enough
 */
export async function findWarmUp({ scenario, seed, ...options }: FindWarmUpOptions): Promise<number> {
  const { lengthMin } = scenario.programme;
  if (lengthMin === undefined) return 0;
  const replicator = new Replicator({ ...options, seed });
  try {
    const model = pilotModel(scenario, lengthMin),
      [lead = NaN] = await replicator.row({ key: 'lead', model, read: ({ leadMean }) => leadMean }, 1, 1),
      found = await pilotCut(
        scenario,
        {
          replications: REPLICATIONS,
          minutes: firstPilot(lead, lengthMin),
          most: LONGEST * lengthMin,
        },
        replicator,
      );
    if (found === null) return 0;
    if (found === 'too long')
      throw new RangeError(
        'programme: expected a start-up that MSER-5 ends within a quarter of ' +
          `${LONGEST} times the length, got one that it does not; raise the length, or give a warm up`,
      );
    return TIMES_CUT * found.cut;
  } finally {
    await replicator.close();
  }
}
