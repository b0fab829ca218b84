import type { Fill, Kind } from './kind.js';
import { mustBeFinite, scaling } from './kind.js';

export interface Constant {
  readonly kind: 'constant';
  readonly value: number;
}

export const constant: Kind<Constant> = {
  check({ value }) {
    mustBeFinite('constant value', value);
  },
  moments: ({ value }) => ({ mean: value, variance: 0 }),
  least: ({ value }) => value,
  scaled: scaling('value'),
  filling: ({ value }) => always(value),
};

/** Draws nothing from the stream. */
export function always(value: number): Fill {
  return (out, from, to) => {
    out.fill(value, from, to);
  };
}
