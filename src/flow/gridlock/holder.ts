import type { Lacked, LackKind } from './lacks.js';
import type { Whereabouts } from './whereabouts.js';

/**
 * How somebody has it: it stays with the unit as a carrier or a team does; its people are at work on it;
 * the unit stands there; it is a part in the making; an earlier claim of the unit goes first.
 */
export type HeldHow = 'stays' | 'works' | 'stands' | 'made' | 'claims';

export interface Holder extends Whereabouts {
  readonly how: HeldHow;
  /** Of what is lacked: carriers, people, places or spaces, parts. */
  readonly amount: number;
  /** What it waits for itself and never gets; empty: it can still go on. */
  readonly lacks: readonly Pick<Lacked, 'kind' | 'name'>[];
}

/** One thing that units of a ring lack, and who on the whole floor has it. */
export interface Held {
  readonly kind: LackKind;
  readonly name: string;
  /**
   * How many there are: carriers, people of the largest shift, places and limited spaces, trucks; null: not
   * counted, as of parts.
   */
  readonly all: number | null;
  /** Most that one claim wants. */
  readonly wanted: number;
  /** Free or in stock; on the way: carriers that come back, parts that are ordered. */
  readonly free: number;
  readonly coming: number;
  /** Of a crew: people of the present shift. */
  readonly onHand: number | null;
  /** Of a crew, carriers, parts: the site where they are; empty for the others. */
  readonly site: string;
  readonly by: readonly Holder[];
}
