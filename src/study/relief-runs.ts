import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import type { Scenario } from '../scenario/scenario.js';
import { ReliefScreen, type ScreenOptions } from './relief-screen.js';
import type { Replicator } from './replicator.js';
import { ratio } from './sample.js';
import { moneyOf } from './summary-costs.js';

/** What is compared of a replication: units a working day, and money a unit shipped (NaN without prices). */
export interface Compared { readonly throughput: number; readonly cost: number }
export interface Changed { readonly key: string; readonly scenario: Scenario; readonly model: Model }
/** A screened group: by member why it was out, and its replications in order. */
export interface Screened { readonly outs: ReliefScreen['outs']; readonly rows: readonly (readonly Compared[])[] }

/** Observations are large, so only those of so many variants are held at a time. */
const AT_ONCE = 16;

/** Replications `from` to `to` of each, with no more kept of them than is compared. */
export async function compared(replicator: Replicator<Observation>, all: readonly Changed[], from: number, to: number, throughput: (observation: Observation) => number): Promise<Compared[][]> {
  const rows: Compared[][] = [];
  for (let first = 0; first < all.length; first += AT_ONCE) {
    const some = all.slice(first, first + AT_ONCE), seen = await replicator.run(some, from, to);
    rows.push(...seen.map((observations, i) => rowOf(some[i]!, observations, throughput)));
  }
  return rows;
}

export function rowOf({ model, scenario }: Changed, observations: readonly Observation[], throughput: (observation: Observation) => number): Compared[] {
  const money = moneyOf(model, scenario.costs);
  return observations.map((each) => ({ throughput: throughput(each), cost: money === null ? NaN : ratio(money(each), each.shipped) }));
}

/** Runs a group against the base from look to look; `ends` are the replications after which is looked. */
export async function screened(
  all: readonly Changed[], base: readonly Compared[], ends: readonly number[], options: Omit<ScreenOptions, 'count' | 'first' | 'looks'>,
  run: (some: readonly Changed[], from: number, to: number) => Promise<Compared[][]>,
): Promise<Screened> {
  const screen = new ReliefScreen({ ...options, count: all.length, first: ends[0]!, looks: ends.length }), rows: Compared[][] = all.map(() => []);
  let done = 0;
  for (const end of ends) {
    const alive = screen.alive, seen = await run(alive.map((i) => all[i]!), done + 1, end);
    alive.forEach((i, at) => void rows[i]!.push(...seen[at]!));
    // What was run to the end is compared, whatever the last look would say.
    if (end < ends.at(-1)!) screen.look(seen.map((row) => row.map((each, r) => each.throughput - base[done + r]!.throughput)));
    done = end;
  }
  return { outs: screen.outs, rows };
}
