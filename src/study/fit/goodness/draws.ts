import { type Distribution, kindOf } from '../../../random/distribution.js';
import type { Fill } from '../../../random/kinds/kind.js';
import { STATE_WORDS, seedStream } from '../../../random/streams.js';

/** Samples of one size of a distribution, from a stream of their own. */
export class Draws {
  private readonly state = new Int32Array(STATE_WORDS);
  private readonly scratch: Float64Array;
  private readonly fill: Fill;

  /**
   * @param stream its full name
   * @param unit values are rounded to whole multiples of it, as those of the sample were; 0 for none
   */
  constructor(
    distribution: Distribution,
    private readonly size: number,
    stream: string,
    private readonly unit = 0,
  ) {
    seedStream(this.state, 0, stream);
    this.scratch = new Float64Array(2 * size);
    this.fill = kindOf(distribution).filling(distribution);
  }

  next(): Float64Array {
    const { size, unit } = this,
      values = new Float64Array(size);
    this.fill(values, 0, size, this.state, 0, this.scratch);
    // Nobody writes down that no time was needed: the least is one unit.
    if (unit > 0) for (let i = 0; i < size; i++) values[i] = Math.max(1, Math.round(values[i] / unit)) * unit;
    return values;
  }
}
