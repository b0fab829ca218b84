import { toDiscrete, toEmpirical, toExponential, toTriangular, toWeibull } from './by-inversion.js';
import { fillCutNormal } from './kinds/normal.js';
import type { Distribution } from './distribution.js';
import { toExpOfLine } from './exponential-function.js';
import { fillBeta, fillGamma } from './kinds/gamma.js';
import {
  CONSTANT,
  CUT_NORMAL,
  DISCRETE,
  EMPIRICAL,
  EXPONENTIAL,
  GAMMA,
  LOGNORMAL,
  PERT,
  TRIANGULAR,
  UNIFORM,
  WEIBULL,
  type Recipe,
  recipeOf,
} from './recipe.js';
import { fillUniform, seedStream, STATE_WORDS, streamName } from './streams.js';
import { fillNormal } from './ziggurat.js';

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
  private readonly recipes: readonly Recipe[];
  private readonly values: Float64Array;
  private readonly position: Int32Array;
  private readonly state: Int32Array;
  private readonly begun: Uint8Array;
  private readonly scratch = new Float64Array(2 * BLOCK);

  /**
   * @throws RangeError when two draws share a name (they would repeat each other's values) or when a
   * distribution has
   * no meaning; the message names the draw
   */
  constructor(
    draws: readonly Draw[],
    private readonly seed: string,
    private replication: number,
  ) {
    const count = draws.length;
    const seen = new Set<string>();
    for (const { name } of draws) {
      if (seen.has(name))
        throw new RangeError(`draw names must differ, saw "${name}" twice; rename one of them`);
      seen.add(name);
    }
    this.names = draws.map((draw) => draw.name);
    this.recipes = draws.map(namedRecipe);
    this.values = new Float64Array(count * BLOCK);
    this.position = new Int32Array(count);
    this.state = new Int32Array(count * STATE_WORDS);
    this.begun = new Uint8Array(count);
    this.reset(replication);
  }

  /** Goes to the beginning of every stream of another replication; nothing is allocated. */
  reset(replication: number): void {
    this.replication = replication;
    this.begun.fill(0);
    for (let i = 0; i < this.position.length; i++) this.position[i] = i * BLOCK;
  }

  /** The next value of draw `i`, counted from 0 in the order of the constructor's list. */
  next(i: number): number {
    const p = this.position[i];
    if ((p & IN_BLOCK) === 0) return this.refill(i);
    // Past the block's last value the position is the next multiple of BLOCK, which asks for a refill.
    this.position[i] = p + 1;
    return this.values[p];
  }

  /** Makes the next block of draw `i` and gives its first value. */
  private refill(i: number): number {
    const at = i * STATE_WORDS;
    if (this.begun[i] === 0) {
      seedStream(this.state, at, streamName(this.seed, this.replication, this.names[i]));
      this.begun[i] = 1;
    }
    const from = i * BLOCK;
    this.fill(this.recipes[i], from, from + BLOCK, at);
    this.position[i] = from + 1;
    return this.values[from];
  }

  private fill(recipe: Recipe, from: number, to: number, at: number): void {
    const { values: out, state } = this;
    const { a, b, c, d } = recipe;
    switch (recipe.way) {
      case CONSTANT:
        out.fill(a, from, to);
        return;
      case UNIFORM:
        fillUniform(out, from, to, state, at);
        for (let k = from; k < to; k++) out[k] = a + b * out[k];
        return;
      case TRIANGULAR:
        fillUniform(out, from, to, state, at);
        {
          toTriangular(out, from, to, a, b, c);
          return;
        }
      case PERT:
        fillBeta(out, from, to, state, at, c, d, this.scratch);
        for (let k = from; k < to; k++) out[k] = a + b * out[k];
        return;
      case EXPONENTIAL:
        fillUniform(out, from, to, state, at);
        {
          toExponential(out, from, to, a);
          return;
        }
      case GAMMA:
        fillGamma(out, from, to, state, at, a, this.scratch);
        for (let k = from; k < to; k++) out[k] = b * out[k];
        return;
      case LOGNORMAL:
        fillNormal(out, from, to, state, at);
        {
          toExpOfLine(out, from, to, a, b);
          return;
        }
      case WEIBULL:
        fillUniform(out, from, to, state, at);
        {
          toWeibull(out, from, to, a, b);
          return;
        }
      case CUT_NORMAL: {
        fillCutNormal(out, from, to, state, at, a, b, c, d);
        return;
      }
      case DISCRETE:
        fillUniform(out, from, to, state, at);
        {
          toDiscrete(out, from, to, recipe.values, recipe.upTo);
          return;
        }
      case EMPIRICAL:
        fillUniform(out, from, to, state, at);
        {
          toEmpirical(out, from, to, recipe.values);
          return;
        }
      default:
        throw new Error(`way of drawing must be one of recipe.ts, saw ${recipe.way}`);
    }
  }
}

function namedRecipe(draw: Draw): Recipe {
  try {
    return recipeOf(draw.distribution);
  } catch (error) {
    if (error instanceof RangeError)
      throw new RangeError(`draw "${draw.name}": ${error.message}`, { cause: error });
    throw error;
  }
}
