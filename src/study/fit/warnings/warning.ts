import type { Mixture } from '../../../random/kinds/mixture.js';

/** Of a test of a sample: warned where p is below. 30 steps with three tests each would else cry wolf. */
export const WARNED_BELOW = 0.01;

/** Something about a sample that a planner should know before its times go into a scenario. */
export type Warning =
  | Told<'drift', { readonly p: number; readonly correlation: number; readonly change: number }>
  | Told<'not independent', { readonly p: number; readonly correlation: number }>
  | Told<'rounding', { readonly unit: number; readonly share: number; readonly p: number }>
  | Told<'two populations', { readonly p: number; readonly mixture: Mixture }>
  | Told<'far from all others', { readonly which: readonly number[] }>
  | Told<'option', { readonly p: number; readonly option: string }>;

type Told<Kind extends string, Found> = Found & {
  readonly kind: Kind;
  /** One plain sentence. */
  readonly told: string;
};
