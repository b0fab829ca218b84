import type { Observation } from '../../measure/observe.js';
import { defined } from '../lists.js';
import { lastUnitDay } from '../programme/dates.js';
import type { Replicator, Variant } from '../run/replicator.js';
import { unitCost } from '../sections/costs.js';
import type { Estimate } from '../statistics/estimate.js';
import { sumOf } from '../statistics/sums.js';
import type { Changed } from './changes.js';
import type { Screening } from './forecast.js';
import { type Out, ReliefScreen, type ScreenOptions } from './screen.js';

/**
 * What is compared of a replication: units shipped in the planner's unit of time, money a unit shipped (NaN
 * without prices), and days from the start to the last unit out (NaN unless all are).
 */
export interface Compared {
  readonly throughput: number;
  readonly cost: number;
  readonly lastUnit: number;
}

/** Replications after which is looked ahead of the last: most are out by then. */
const LOOKS = [5, 10, 15, 20, 30];

export const looksOf = (most: number): number[] => [...LOOKS.filter((look) => look < most), most];

/** Surely more than the base, be it ever so little. */
export const surelyGains = ({ low }: Estimate): boolean => low !== null && low > 0;

/**
 * A member of a screened group: its replications in order, and why it was out before the last; null: it was
 * not.
 */
export interface Screened<Member> {
  readonly member: Member;
  readonly row: readonly Compared[];
  readonly out: Out | null;
}

/** Reads what is compared; the costs of a variant are those of its own scenario. */
export function toCompare<Member extends Changed>(
  member: Member,
  throughput: (observation: Observation) => number,
): Member & Variant<Compared> {
  const cost = unitCost(member.scenario, member.model);
  return {
    ...member,
    read: (seen) => ({
      throughput: throughput(seen),
      cost: cost === null ? NaN : cost(seen),
      lastUnit: lastUnitDay(seen),
    }),
  };
}

/** What a change gains over the base in each of its replications, of which number `from` + 1 is the first. */
export const gainsOver = (
  base: readonly Compared[],
  row: readonly Compared[],
  what: keyof Compared,
  from = 0,
): number[] => row.map((each, r) => each[what] - defined(base[from + r])[what]);

/**
 * Runs a group against the base from look to look; `looks` are the replications after which is looked, and
 * after each it is `told` how far it is.
 */
export async function screened<Member extends Variant<Compared>>(
  group: readonly Member[],
  base: readonly Compared[],
  looks: readonly number[],
  options: Omit<ScreenOptions, 'count' | 'looks'>,
  replicator: Replicator,
  told: (screening: Screening) => void,
): Promise<Screened<Member>[]> {
  const most = Math.max(...looks),
    screen = new ReliefScreen({ ...options, count: group.length, looks: looks.length }),
    all = group.map((member) => ({ member, row: [] as Compared[] }));
  let done = 0;
  for (const end of looks) {
    const alive = screen.alive.map((i) => defined(all[i])),
      seen = await replicator.rows(
        alive.map(({ member }) => member),
        done + 1,
        end,
      );
    for (const [at, more] of seen.entries()) defined(alive[at]).row.push(...more);
    // What was run to the end is compared, whatever the last look would say.
    if (end < most) screen.look(seen.map((more) => gainsOver(base, more, 'throughput', done)));
    done = end;
    const run = sumOf(all, ({ row }) => row.length);
    told({ run, alive: screen.alive.length, each: end });
  }
  return all.map((each, i) => ({ ...each, out: defined(screen.outs[i]) }));
}
