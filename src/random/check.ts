import type { Distribution } from './distribution.js';

const fail = (what: string, expected: string, seen: unknown): never => {
  throw new RangeError(`${what} must be ${expected}, saw ${String(seen)}`);
};

/** Throws a RangeError that names the parameter unless `value` is a finite number. */
export function mustBeFinite(what: string, value: number): void {
  if (!Number.isFinite(value)) fail(what, 'a finite number', value);
}

/** Throws a RangeError that names the parameter unless `value` is finite and above zero. */
export function mustBePositive(what: string, value: number): void {
  if (!(value > 0 && value < Infinity)) fail(what, 'above 0 and finite', value);
}

/** Throws a RangeError that names the parameter unless `value` is finite and not below zero. */
export function mustNotBeNegative(what: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) fail(what, '0 or more and finite', value);
}

/**
 * Throws a RangeError that names kind, parameter and value when a distribution has no meaning: a bound out of
 * order, a shape of zero, no values to choose from.
 */
export function checkDistribution(d: Distribution): void {
  switch (d.kind) {
    case 'constant': {
      mustBeFinite('constant value', d.value);
      return;
    }
    case 'uniform':
      mustBeFinite('uniform low', d.low);
      mustBeFinite('uniform high', d.high);
      if (d.low > d.high) fail('uniform high', `at least low (${d.low})`, d.high);
      return;
    case 'triangular':
    case 'pert':
      mustBeFinite(`${d.kind} low`, d.low);
      mustBeFinite(`${d.kind} likely`, d.likely);
      mustBeFinite(`${d.kind} high`, d.high);
      if (d.likely < d.low) fail(`${d.kind} likely`, `at least low (${d.low})`, d.likely);
      if (d.likely > d.high) fail(`${d.kind} likely`, `at most high (${d.high})`, d.likely);
      return;
    case 'exponential': {
      mustBePositive('exponential mean', d.mean);
      return;
    }
    case 'gamma':
    case 'weibull':
      mustBePositive(`${d.kind} shape`, d.shape);
      {
        mustBePositive(`${d.kind} scale`, d.scale);
        return;
      }
    case 'lognormal':
      mustBeFinite('lognormal mu', d.mu);
      {
        mustNotBeNegative('lognormal sigma', d.sigma);
        return;
      }
    case 'normal':
      mustBeFinite('normal mean', d.mean);
      mustNotBeNegative('normal sd', d.sd);
      if (Number.isNaN(d.low) || d.low === Infinity) fail('normal low', 'a number or -Infinity', d.low);
      if (Number.isNaN(d.high) || d.high === -Infinity) fail('normal high', 'a number or Infinity', d.high);
      if (d.low > d.high) fail('normal high', `at least low (${d.low})`, d.high);
      return;
    case 'discrete':
      if (d.values.length === 0) fail('discrete values', 'one number or more', 'none');
      if (d.weights.length !== d.values.length) {
        fail('discrete weights', `as many as the values (${d.values.length})`, d.weights.length);
      }
      d.values.forEach((value, k) => {
        mustBeFinite(`discrete values[${k}]`, value);
      });
      d.weights.forEach((weight, k) => {
        mustNotBeNegative(`discrete weights[${k}]`, weight);
      });
      {
        mustBePositive(
          'sum of the discrete weights',
          d.weights.reduce((sum, weight) => sum + weight, 0),
        );
        return;
      }
    case 'empirical':
      if (d.values.length === 0) fail('empirical values', 'one number or more', 'none');
      d.values.forEach((value, k) => {
        mustBeFinite(`empirical values[${k}]`, value);
      });
  }
}
