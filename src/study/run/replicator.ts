import { setImmediate } from 'node:timers/promises';
import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Journal } from './journal.js';
import type { Runner, RunnerOptions, ToRun } from './runner.js';
import { type ThreadOptions, Threads } from './threads.js';

/** A scenario, or a changed one, as it is run. `key` tells it from all others of the study. */
export interface Variant<Value> {
  readonly key: string;
  readonly model: Model;
  /** What a replication is for the study: the whole observation, or what the study needs of it. */
  readonly read: (observation: Observation) => Value;
  /** The first so many replications are watched closely, see `prepare`; none where left out. */
  readonly closely?: number | undefined;
  /** Only its first so many replications are ever run; all that are asked for where left out. */
  readonly most?: number | undefined;
  /** What is run in a replication in the place of `model`, where that is not the same in all of them. */
  readonly drawn?: ((replication: number) => ToRun) | undefined;
  /** What a replication would be, where that is known without running it. */
  readonly known?: ((replication: number) => Value | undefined) | undefined;
}

/** The last replication of a variant where those up to `to` are asked for. */
export const lastOf = ({ most = Infinity }: Pick<Variant<unknown>, 'most'>, to: number): number =>
  Math.min(to, most);

/** Under which a replication stands in journals. */
export const keyOf = ({ key }: Pick<Variant<unknown>, 'key'>, replication: number): string =>
  `${key} ${replication}`;

/** Reads the whole observation. */
export const whole = (observation: Observation): Observation => observation;

export interface ReplicatorOptions extends ThreadOptions {
  /** Makes what runs them, where that is not threads of this process. */
  readonly through?: ((options: RunnerOptions) => Runner) | undefined;
  /** Finished replications of an earlier run, and where new ones are written. */
  readonly journal?: Journal<unknown> | undefined;
  /**
   * Called when some are planned, and after each that was run or found in the journal, in the order in which
   * they end.
   */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
}

/**
 * Replications under way for each worker, finished ones that wait for those before them among them. So while
 * one takes some four times as long as the others, every worker still has work.
 */
const LANES = 4;

/** Is given each value when its turn has come; `index`: that of its variant. */
export type Take<Value> = (value: Value, index: number) => unknown;

interface Job<Value> {
  readonly variant: Variant<Value>;
  readonly index: number;
  readonly replication: number;
}

/**
 * Runs replications of variants on all workers, and hands over what was read of them in the order asked, the
 * same for any number of workers, for any that died, and whatever the journal held already. Close it at the
 * end.
 */
export class Replicator {
  private readonly runner: Runner;
  private readonly progress = { done: 0, planned: 0 };
  /** Its first replication is the one behind so many. */
  private readonly after: number = 0;

  constructor(private readonly options: ReplicatorOptions) {
    this.runner = options.through?.(options) ?? new Threads(options);
  }

  /**
   * The same replicator with replications that follow so many: what was chosen by the first ones is told by
   * these.
   */
  behind(replications: number): Replicator {
    return Object.create(this, { after: { value: this.after + replications } }) as Replicator;
  }

  /**
   * Replications `from`, `from + every` .. up to `to` of each variant, or its `most`, handed over one at a
   * time: by variant, in replication order. A lane begins another replication only when its last one was
   * handed over, so no more values wait than there are lanes.
   */
  async each<Value>(
    variants: readonly Variant<Value>[],
    from: number,
    to: number,
    every: number,
    take: Take<Value>,
  ): Promise<void> {
    const { workers, through, signal } = this.options,
      lanes = workers > 1 || through !== undefined ? LANES * workers : 1,
      { progress } = this;
    signal?.throwIfAborted();
    for (const { variant, replication } of jobsOf(variants, from, to, every))
      if (!this.isKnown(variant, replication)) progress.planned++;
    this.options.onReplication?.(progress.done, progress.planned);
    const jobs = jobsOf(variants, from, to, every);
    let isOver = false,
      last = Promise.resolve();
    const goesOn = (): boolean => !isOver;
    const handOver = async (job: Job<Value>, before: Promise<void>): Promise<void> => {
      const value = await this.one(job.variant, job.replication);
      signal?.throwIfAborted();
      if (isOver) return;
      if (!this.isKnown(job.variant, job.replication))
        this.options.onReplication?.(++progress.done, progress.planned);
      // A fault before this one is thrown here too: nobody waits in vain.
      await before;
      if (goesOn()) take(value, job.index);
    };
    const lane = async (): Promise<void> => {
      try {
        for (const job of jobs) {
          if (isOver) return;
          await (last = handOver(job, last));
        }
      } catch (error) {
        // Nothing more is begun, told or handed over.
        isOver = true;
        throw error;
      }
    };
    await Promise.all(Array.from({ length: lanes }, lane));
  }

  /** The same in rows, one for each variant, for a study that needs all values together. */
  async rows<Value>(variants: readonly Variant<Value>[], from: number, to: number): Promise<Value[][]> {
    const rows = variants.map((): Value[] => []);
    await this.each(variants, from, to, 1, (value, index) => rows[index]?.push(value));
    return rows;
  }

  /** The row of a single variant. */
  async row<Value>(variant: Variant<Value>, from: number, to: number): Promise<Value[]> {
    const [row = []] = await this.rows([variant], from, to);
    return row;
  }

  /** No thread of it is left. */
  async close(): Promise<void> {
    await this.runner.close();
  }

  private isKnown<Value>({ known }: Variant<Value>, number: number): boolean {
    return known?.(this.after + number) !== undefined;
  }

  private async one<Value>(variant: Variant<Value>, number: number): Promise<Value> {
    const { journal } = this.options,
      replication = this.after + number,
      already = variant.known?.(replication);
    if (already !== undefined) return already;
    const key = keyOf(variant, replication),
      known = journal?.get(key);
    if (known !== undefined) {
      // Lets a signal come through, here and below: a journal may be long.
      await setImmediate();
      // Written by this very study: the journal knows no other.
      return known as Value;
    }
    const value = variant.read(
      await this.runner.observe(variant.drawn?.(replication) ?? variant, replication),
    );
    journal?.add(key, value);
    return value;
  }
}

/** By variant, in replication order. */
function* jobsOf<Value>(
  variants: readonly Variant<Value>[],
  from: number,
  to: number,
  every: number,
): Generator<Job<Value>> {
  for (const [index, variant] of variants.entries())
    for (let replication = from; replication <= lastOf(variant, to); replication += every)
      yield { variant, index, replication };
}
