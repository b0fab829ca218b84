/**
 * What is known of single units before the run (rule 15): name, options, due date, where they stand at its
 * start. Columns by build number - 1: first the units of the opening, then the released ones; units after the
 * first `count` are drawn.
 */
export interface OrderColumns {
  readonly count: number;
  /**
   * The planner's own build numbers; may go on beyond `count`, with holes. Units without one are called by
   * their number.
   */
  readonly names: readonly (string | undefined)[];
  /** Option values, row * options + option; -1 drawn. */
  readonly values: Int16Array;
  /** End of the due day; Infinity: no date of its own. */
  readonly dueAt: Float64Array;
  /** Minutes from release to due for units without a date of their own; Infinity: they are never due. */
  readonly dueAfter: number;
  /** Step that each unit of the opening is about to begin; its length is the number of these units. */
  readonly openingStep: Int32Array;
  /** The order of a scrapped unit is built again. */
  readonly replaceScrapped: boolean;
}

interface WithOrders {
  readonly programme: { readonly orders: OrderColumns };
}

/** What the planner calls a unit. */
export const buildName = ({ programme: { orders } }: WithOrders, number: number): string =>
  orders.names[number - 1] ?? String(number);

/** Whether any unit has a due date. */
export const hasDueDates = ({ programme: { orders } }: WithOrders): boolean =>
  orders.dueAfter < Infinity || orders.dueAt.some((time) => time < Infinity);
