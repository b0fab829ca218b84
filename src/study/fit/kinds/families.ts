import type { Distribution } from '../../../random/distribution.js';
import { cutNormal } from './cut-normal.js';
import { exponential } from './exponential.js';
import type { Curve, Family } from './family.js';
import { gamma } from './gamma.js';
import { lognormal } from './lognormal.js';
import { pert } from './pert.js';
import { triangular } from './triangular.js';
import { uniform } from './uniform.js';
import { weibull } from './weibull.js';

/** Kinds of src/random that are fitted to times, by kind. */
const BY_KIND = { lognormal, gamma, weibull, exponential, normal: cutNormal, uniform, triangular, pert };
export type FittedKind = keyof typeof BY_KIND;

/** All families; of equal ones the first is told first. */
export const FAMILIES = Object.values(BY_KIND) as readonly Family[];

/** The family of a distribution; undefined of kinds that are not fitted. */
export const familyOf = ({ kind }: Distribution): Family | undefined =>
  Object.hasOwn(BY_KIND, kind) ? BY_KIND[kind as FittedKind] : undefined;

/** Density, cumulative curve and quantiles of a distribution that can be fitted; undefined of other kinds. */
export const curveOf = (distribution: Distribution): Curve | undefined =>
  familyOf(distribution)?.curve(distribution);
