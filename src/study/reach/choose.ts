import { defined } from '../lists.js';
import type { Changed } from '../reliefs/changes.js';
import type { Replicator } from '../run/replicator.js';
import { difference } from '../statistics/difference.js';
import type { ReachResults } from './results.js';
import { cheapestNotShort } from './search/cheapest.js';
import type { Choices, Counts } from './search/choices.js';
import { decided, type Finalist } from './search/finalists.js';
import { frontier } from './search/frontier.js';
import { LOOKS, type Pool } from './search/pool.js';
import type { Setting } from './search/setting.js';
import type { Verified } from './verify.js';

/** The set that is told, and how sure that is. */
export interface Chosen extends Pick<ReachResults['search'], 'isProven'> {
  readonly outcome: ReachResults['outcome'];
  readonly counts: Counts;
  readonly verified: Verified;
  readonly finalists: readonly Finalist[];
}

export interface ChooseAsked {
  readonly setting: Setting;
  /** Replications by which each of the last few is decided, at most. */
  readonly most: number;
  readonly level: number;
  /** Of replications that had no part in the search. */
  readonly fresh: Replicator;
  /** Whether a build reaches the goal at the plan itself, by replications that decided nothing before. */
  readonly verify: (changed: Changed) => Promise<Verified>;
  readonly onStage: (text: string) => void;
}

/** So many sets are decided by fresh replications, one after the other, before it is given up. */
const MOST_DECIDED = 8;

/**
 * Chooses the cheapest set that reaches the goal: the cheapest that is not surely short in the search is
 * decided by fresh replications; if it reaches the goal it is judged at the plan itself by others again; if
 * not, or if it does not stand up to that, the next is looked for. The k-th decision may be wrong with half
 * the chance of the one before, so that all of them together hold with `level`.
 */
export async function choose(choices: Choices, pool: Pool, asked: ChooseAsked): Promise<Chosen> {
  const { setting, most, level, fresh, verify, onStage } = asked,
    finalists: Finalist[] = [];
  let close: Omit<Chosen, 'finalists' | 'isProven'> | null = null,
    isProven: boolean;
  for (let error = (1 - level) / 2; ; error /= 2) {
    const found = await cheapestNotShort(
      choices,
      pool,
      finalists.map(({ counts }) => counts),
    );
    isProven = found !== undefined && finalists.length < MOST_DECIDED;
    if (found == null || !isProven) break;
    const { counts } = found;
    onStage(finalists.length === 0 ? 'deciding on the cheapest set' : 'deciding on the next cheapest set');
    const finalist = await decided(counts, pool.variants(counts), setting, { most, error }, fresh);
    finalists.push(finalist);
    if (finalist.side === 'below') continue;
    const verified = await verify(pool.build(counts)),
      holds = verified.verdict === 'holds',
      its = { counts, verified, outcome: holds ? outcomeOf(counts) : 'not settled' } as const;
    if (holds) return { ...its, isProven, finalists };
    close ??= its;
  }
  return { ...(close ?? (await farthest(choices, pool, asked))), isProven, finalists };
}

const outcomeOf = (counts: Counts): 'holds already' | 'reached' =>
  counts.every((count) => count === 0) ? 'holds already' : 'reached';

/** So many of the dearest of the frontier are looked at closely. */
const LAST = 4;

/** The cheapest of the sets that do most: of those that may be made none is surely ahead of it. */
async function farthest(
  choices: Choices,
  pool: Pool,
  { setting, level, verify }: ChooseAsked,
): Promise<Pick<Chosen, 'outcome' | 'counts' | 'verified'>> {
  const [{ goal }] = setting,
    last = frontier(pool.ran, choices, pool, goal.zone).slice(-LAST),
    look = Math.max(...LOOKS);
  await pool.run(last, look);
  const isAhead = (other: Counts, set: Counts): boolean => {
      const { low } = difference(pool.worths(set, look), pool.worths(other, look), level).difference;
      return low !== null && low > 0;
    },
    counts = defined(last.find((set) => last.every((other) => other === set || !isAhead(other, set))));
  return { outcome: 'not reached', counts, verified: await verify(pool.build(counts)) };
}
