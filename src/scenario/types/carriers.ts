import type { Distribution } from '../../random/distribution.js';

/** Steps of one route, both included, over which something stays with a unit. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
}
/** Carts, dollies, fixtures. */
export interface Carriers extends Stretch {
  readonly count: number;
  readonly return: Distribution;
  /** Calendar in which they are brought back; undefined: any time. */
  readonly hours: string | undefined;
}
/** Some people of a crew at the site of `from`. */
export interface Team extends Stretch {
  readonly crew: string;
  readonly people: number;
}
