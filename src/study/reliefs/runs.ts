import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { ReliefScreen, type ScreenOptions } from './screen.js';
import { ratio } from '../statistics/sums.js';
import { moneyOf } from '../sections/costs.js';

/** What is compared of a replication: units a working day, and money a unit shipped (NaN without prices). */
export interface Compared {
  readonly throughput: number;
  readonly cost: number;
}
export interface Changed {
  readonly key: string;
  readonly scenario: Scenario;
  readonly model: Model;
}
/** A screened group: by member why it was out, and its replications in order. */
export interface Screened {
  readonly outs: ReliefScreen['outs'];
  readonly rows: readonly (readonly Compared[])[];
}

/** What is compared of the replications of one variant; its costs are those of its own scenario. */
export function comparedOf(
  { model, scenario }: Changed,
  throughput: (observation: Observation) => number,
): (observation: Observation) => Compared {
  const money = moneyOf(model, scenario.costs);
  return (seen) => ({
    throughput: throughput(seen),
    cost: money === null ? NaN : ratio(money(seen), seen.shipped),
  });
}

/** Runs a group against the base from look to look; `ends` are the replications after which is looked. */
export async function screened(
  all: readonly Changed[],
  base: readonly Compared[],
  ends: readonly number[],
  options: Omit<ScreenOptions, 'count' | 'first' | 'looks'>,
  run: (some: readonly Changed[], from: number, to: number) => Promise<Compared[][]>,
): Promise<Screened> {
  const screen = new ReliefScreen({ ...options, count: all.length, first: ends[0]!, looks: ends.length }),
    rows: Compared[][] = all.map(() => []);
  let done = 0;
  for (const end of ends) {
    const alive = screen.alive,
      seen = await run(
        alive.map((i) => all[i]!),
        done + 1,
        end,
      );
    alive.forEach((i, at) => void rows[i]!.push(...seen[at]!));
    // What was run to the end is compared, whatever the last look would say.
    if (end < ends.at(-1)!)
      screen.look(seen.map((row) => row.map((each, r) => each.throughput - base[done + r]!.throughput)));
    done = end;
  }
  return { outs: screen.outs, rows };
}
