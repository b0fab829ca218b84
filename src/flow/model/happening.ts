/**
 * What happens to units and sub-assemblies on the floor, in ids of the model: what a floor log is made of.
 * The kinds are those of a floor log (`records/log/event.ts`).
 */
export interface Happening {
  /** Minutes since the programme's start. */
  readonly at: number;
  readonly kind:
    | 'enter'
    | 'arrive'
    | 'start'
    | 'end'
    | 'find'
    | 'join'
    | 'load'
    | 'unload'
    | 'ship'
    | 'scrap';
  /** Route and number: who it is. Route 0 is that of units; own parts have the number of their unit. */
  readonly route: number;
  readonly number: number;
  /** -1 none. */
  readonly step: number;
  readonly others: readonly Other[];
  /** Of a unit or own parts that enter: a value by option. */
  readonly options?: readonly number[];
  readonly found?: Found;
}

/** What else takes part. */
export type Other =
  /** Number 0 and below: of the stock at the start, -k is the one after the k-th. */
  | { readonly kind: 'part'; readonly route: number; readonly number: number }
  /** Index among the trucks of the lane, from 0. */
  | { readonly kind: 'truck'; readonly lane: number; readonly index: number }
  /** Index among the carriers of the resource, from 0. */
  | { readonly kind: 'carrier'; readonly resource: number; readonly index: number };

/** A find of an inspection or a test. */
export interface Found {
  /** Row of the find. */
  readonly find: number;
  /** What is found had been found before, and was passed on. */
  readonly again: boolean;
  /** Step that the unit is sent back to for it, -1: it is not sent back. */
  readonly to: number;
}
