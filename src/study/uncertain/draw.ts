import type { Distribution } from '../../random/distribution.js';
import { exp } from '../../random/elementary.js';
import { Sampler } from '../../random/sampler.js';
import { parseYaml } from '../../scenario/file/yaml.js';
import { mapOf } from '../../scenario/values/raw.js';
import { written } from '../fit/written.js';
import type { UncertainInput } from './inputs.js';
import { refit, refitMixture } from './refit.js';

/** More values than these are not drawn: what so many do not tell moves no result. */
const MOST_VALUES = 20_000;
/** A sample that no distribution of the kind fits is drawn again so often; then it stays as written. */
const MOST_TRIES = 20;

/** The next values of a stream of a draw: `seed/draw/input path`, with what it is of behind it. */
type Values = (purpose: string, distribution: Distribution, count: number) => number[];

/**
 * An input as it might have been found, as a scenario has it: data, for its path. Each input has streams of
 * its own, so that a draw of one moves no other.
 *
 * Times: as many as were measured are drawn from the distribution as written, and the same kind is fitted to
 * them (parametric bootstrap: Cheng & Holland 1997, J. Statist. Comput. Simul. 57, 219-241); observed times
 * are drawn from themselves (Barton & Schruben 1993, Proc. Winter Simulation Conference). A chance comes from
 * the Beta posterior of its counts with the prior of Jeffreys, Beta(found + 1/2, n - found + 1/2) (Chick
 * 2001, Operations Research 49(5), 744-758), a learning rate from a normal about its slope, log2 of the rate.
 * All from memory.
 * @param draw from 1
 * @param attempt from 0; another one is as good
 */
export function drawnValue(
  { path, n, of }: UncertainInput,
  seed: string,
  draw: number,
  attempt: number,
): unknown {
  const again = attempt === 0 ? '' : `/again ${attempt}`;
  const values: Values = (purpose, distribution, count) => {
    const sampler = new Sampler([{ name: `input/${path}${again}/${purpose}`, distribution }], seed, draw);
    return Array.from({ length: count }, () => sampler.next(0));
  };
  switch (of.kind) {
    case 'chance':
      return chance(values, of.found, n);
    case 'estimated chance':
      return estimated(values, of.chance, of.standardError);
    case 'learning rate': {
      const [z = 0] = values('slope', { kind: 'normal', mean: 0, sd: 1, low: -Infinity, high: Infinity }, 1);
      // The rate 2^b for the slope b; above 1 times would rise with practice.
      return Math.min(1, of.rate * exp(Math.LN2 * of.standardError * z));
    }
    case 'time':
      return time(values, of.distribution, Math.min(n, MOST_VALUES));
  }
}

const chance = (values: Values, found: number, n: number): number =>
  beta(values, found + 0.5, n - found + 0.5);

/**
 * By the Beta of that mean and standard deviation: mean p, variance p (1 - p) / (a + b + 1). At 0 and 1 the
 * mean is as far from there as after counts that found none or all, where Jeffreys' Beta(1/2, n + 1/2) has a
 * mean of about 0.7 of its standard deviation.
 */
function estimated(values: Values, share: number, standardError: number): number {
  const off = Math.min(0.5, Math.SQRT1_2 * standardError),
    mean = Math.min(1 - off, Math.max(off, share)),
    both = Math.max(1, (mean * (1 - mean)) / (standardError * standardError) - 1);
  return beta(values, mean * both, (1 - mean) * both);
}

/** A Beta is the share of one gamma in two. */
function beta(values: Values, a: number, b: number): number {
  const part = (purpose: string, shape: number): number =>
    values(purpose, { kind: 'gamma', shape, scale: 1 }, 1)[0] ?? NaN;
  const had = part('found', a);
  return had / (had + part('not found', b));
}

function time(values: Values, distribution: Distribution, n: number): unknown {
  for (let k = 0; k < MOST_TRIES; k++) {
    const found =
      distribution.kind === 'mixture'
        ? mixed(values, distribution, n, k)
        : refit(distribution, values(`values ${k}`, distribution, n));
    if (found !== undefined) return asData(found);
  }
  return asData(distribution);
}

/** How many values are of each part, then so many of each. */
function mixed(
  values: Values,
  mixture: Extract<Distribution, { kind: 'mixture' }>,
  n: number,
  k: number,
): Distribution | undefined {
  const { parts, weights } = mixture,
    which = values(`parts ${k}`, { kind: 'discrete', values: parts.map((_, p) => p), weights }, n);
  return refitMixture(
    mixture,
    parts.map((part, p) =>
      values(`values ${k} of part ${p}`, part, which.filter((each) => each === p).length),
    ),
  );
}

/** As a scenario file has it. */
const asData = (distribution: Distribution): unknown =>
  mapOf(parseYaml(`time: ${written(distribution)}\n`, '').value)['time'];
