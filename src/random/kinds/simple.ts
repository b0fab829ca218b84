import { type Constant, constant } from './constant.js';
import { type Discrete, discrete, type Empirical, empirical } from './discrete.js';
import { type Exponential, exponential } from './exponential.js';
import { type Gamma, gamma } from './gamma.js';
import type { Kind } from './kind.js';
import { type Lognormal, lognormal } from './lognormal.js';
import { type Normal, normal } from './normal.js';
import { type Pert, pert, type Triangular, triangular } from './three-points.js';
import { type Uniform, uniform } from './uniform.js';
import { type Weibull, weibull } from './weibull.js';

/** Distributions that are no mixture of others. */
export type Simple =
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

export const SIMPLE: { readonly [K in Simple['kind']]: Kind<Extract<Simple, { kind: K }>> } = {
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
