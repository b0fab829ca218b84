import { type Distribution, kindOf } from './distribution.js';
import type { Fill } from './kinds/kind.js';
import { STATE_WORDS, seedStream, streamName } from './streams.js';

/**
 * Values made at a time for one draw. A power of two: a position that is a multiple of it needs a new block.
 */
const BLOCK = 64;
const IN_BLOCK = BLOCK - 1;

/** A random quantity of the model: its name is `thing/purpose`, such as `prime/work`. */
export interface Draw {
  readonly name: string;
  readonly distribution: Distribution;
}

/**
 * Gives the random values of one replication. Every draw has a stream of its own, begun from the seed, the
 * replication and the draw's name alone: its values do not change when other draws are added, taken away,
 * reordered or used more. A draw that is never used costs nothing but its place.
 */
export class Sampler {
  private readonly names: readonly string[];
  private readonly fillings: Fill[];
  private readonly values: Float64Array;
  private readonly position: Int32Array;
  private readonly state: Int32Array;
  private readonly begun: Uint8Array;
  private readonly scratch = new Float64Array(2 * BLOCK);
  /** State of each stream ahead of its present block; null where no distribution will change. */
  private readonly starts: Int32Array | null;

  /**
   * @throws RangeError when two draws share a name (they would repeat each other's values) or when a
   * distribution has no meaning; the message names the draw
   * @param mayChange whether `change` will be called
   */
  constructor(
    draws: readonly Draw[],
    private readonly seed: string,
    private replication: number,
    mayChange = false,
  ) {
    const count = draws.length;
    const seen = new Set<string>();
    for (const { name } of draws) {
      if (seen.has(name)) throw new RangeError(`draws: expected names that differ, got "${name}" twice`);
      seen.add(name);
    }
    this.names = draws.map((draw) => draw.name);
    this.fillings = draws.map(fillingOf);
    this.values = new Float64Array(count * BLOCK);
    this.position = new Int32Array(count);
    this.state = new Int32Array(count * STATE_WORDS);
    this.begun = new Uint8Array(count);
    this.starts = mayChange ? new Int32Array(count * STATE_WORDS) : null;
    this.reset(replication);
  }

  /** Goes to the beginning of every stream of another replication; nothing is allocated. */
  reset(replication: number): void {
    this.replication = replication;
    this.begun.fill(0);
    for (let i = 0; i < this.position.length; i++) this.position[i] = i * BLOCK;
  }

  /** By draw: 1 where a value of it was taken in this replication. */
  get taken(): Uint8Array {
    return this.begun.slice();
  }

  /** The next value of draw `i`, counted from 0 in the order of the constructor's list. */
  next(i: number): number {
    const p = this.position[i];
    if ((p & IN_BLOCK) === 0) return this.refill(i);
    // Past the block's last value the position is the next multiple of BLOCK, which asks for a refill.
    this.position[i] = p + 1;
    return this.values[p];
  }

  /** The next value of a draw of a time; 0 of none, as a model has for a time of zero. */
  time(i: number): number {
    return i < 0 ? 0 : this.next(i);
  }

  /**
   * From now on draw `i` has another distribution. Its values stand where they would stand had it been so
   * from the start (where each takes as much of the stream): those of the block that are made but not given
   * are made anew.
   */
  change(i: number, distribution: Distribution): void {
    const p = this.position[i],
      at = i * STATE_WORDS,
      from = i * BLOCK,
      fill = (this.fillings[i] = fillingOf({ name: this.names[i], distribution }));
    if ((p & IN_BLOCK) === 0) return;
    for (let k = 0; k < STATE_WORDS; k++) this.state[at + k] = this.starts![at + k];
    fill(this.values, from, from + BLOCK, this.state, at, this.scratch);
  }

  /** Makes the next block of draw `i` and gives its first value. */
  private refill(i: number): number {
    const at = i * STATE_WORDS;
    if (this.begun[i] === 0) {
      seedStream(this.state, at, streamName(this.seed, this.replication, this.names[i]));
      this.begun[i] = 1;
    }
    if (this.starts !== null) for (let k = 0; k < STATE_WORDS; k++) this.starts[at + k] = this.state[at + k];
    const from = i * BLOCK;
    const fill = this.fillings[i];
    fill(this.values, from, from + BLOCK, this.state, at, this.scratch);
    this.position[i] = from + 1;
    return this.values[from];
  }
}

function fillingOf({ name, distribution }: Draw): Fill {
  try {
    return kindOf(distribution).filling(distribution);
  } catch (error) {
    if (error instanceof RangeError)
      throw new RangeError(`draw "${name}": ${error.message}`, { cause: error });
    throw error;
  }
}
