import type { Relief as Small } from '../../scenario/reliefs/relief.js';
import { RELIEF_KINDS, type ReliefKind } from '../../scenario/types/possible.js';
import type { Offer } from '../priced/offer.js';

export { RELIEF_KINDS, type ReliefKind };

/** One change of a scenario that is tried: a small one, or one that the scenario names. */
export interface Relief extends Omit<Small, 'kind'> {
  readonly kind: ReliefKind | 'named change';
  /** What it costs; null: not given; undefined: the scenario names no changes. */
  readonly offer?: Offer | null | undefined;
}
