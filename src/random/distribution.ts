import { constant, type Constant } from './kinds/constant.js';
import { discrete, type Discrete } from './kinds/discrete.js';
import { empirical, type Empirical } from './kinds/empirical.js';
import { exponential, type Exponential } from './kinds/exponential.js';
import { gamma, type Gamma } from './kinds/gamma.js';
import type { Kind } from './kinds/kind.js';
import { lognormal, type Lognormal } from './kinds/lognormal.js';
import { normal, type Normal } from './kinds/normal.js';
import { pert, type Pert } from './kinds/pert.js';
import { triangular, type Triangular } from './kinds/triangular.js';
import { uniform, type Uniform } from './kinds/uniform.js';
import { weibull, type Weibull } from './kinds/weibull.js';

/**
 * What a random quantity is, as plain data. Units are the caller's (the engine uses minutes). What is known of
 * its kind, and how its values are drawn, stands in the file of the kind.
 */
export type Distribution =
  | Constant
  | Uniform
  | Triangular
  | Pert
  | Exponential
  | Gamma
  | Lognormal
  | Weibull
  | Normal
  | Discrete
  | Empirical;

const KINDS: { readonly [K in Distribution['kind']]: Kind<Extract<Distribution, { kind: K }>> } = {
  constant,
  uniform,
  triangular,
  pert,
  exponential,
  gamma,
  lognormal,
  weibull,
  normal,
  discrete,
  empirical,
};

/**
 * What is known of the kind of a distribution, which is checked.
 * @throws RangeError naming the kind, the parameter and its value when the distribution has no meaning
 */
export function kindOf(distribution: Distribution): Kind<Distribution> {
  const kind: Kind<Distribution> = KINDS[distribution.kind];
  kind.check(distribution);
  return kind;
}
