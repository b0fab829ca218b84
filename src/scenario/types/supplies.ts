import type { Distribution } from '../../random/distribution.js';

/** Bought-in parts. Lots are ordered by a reorder level, or come by a plan. */
export interface Supply {
  /** Site where the parts come in and are used. */
  readonly site: string;
  readonly atStart: number;
  readonly order: Reorder | DeliveryDates | DeliveryRhythm;
  readonly late: { readonly chance: number; readonly by: Distribution } | undefined;
}
/**
 * A lot is ordered when stock and orders, less the demand that waits, are at or below level + safety stock.
 */
export interface Reorder {
  readonly kind: 'reorder';
  readonly level: number;
  readonly safetyStock: number;
  readonly lot: number;
  readonly leadTime: Distribution;
}
export interface DeliveryDates {
  readonly kind: 'dates';
  readonly dates: readonly { readonly on: string; readonly lot: number }[];
}
/** Every so many days from `from` (default: the programme's start) to `to` (default: the end of the run). */
export interface DeliveryRhythm {
  readonly kind: 'rhythm';
  readonly lot: number;
  readonly everyDays: number;
  readonly from: string | undefined;
  readonly to: string | undefined;
}
