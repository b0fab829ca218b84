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
  /** By unit of the opening: the inspection that sent it back and that it has not come to again; -1. */
  readonly openingSender: Int32Array;
  /** Minutes done already of the step where it stands: work, then process. */
  readonly openingDone: Float64Array;
  readonly items: OpenItemColumns;
  /** The order of a scrapped unit is built again. */
  readonly replaceScrapped: boolean;
}

/** Items on the units of the opening, by unit; those of unit u are start[u] .. start[u + 1] - 1. */
export interface OpenItemColumns {
  readonly start: Int32Array;
  /** Defect slot; -1: a failed test that leaves no item. */
  readonly slot: Int32Array;
  /** State of the item, of `quality.ts`. */
  readonly state: Uint8Array;
  /** The find by which it is known; -1: nobody has found it. */
  readonly find: Int32Array;
  /** Step at which it came with a part; -1: it is the unit's own. */
  readonly cameAt: Int32Array;
  /** That it is there; below 1 it is drawn by `draw`, of all items in their order. */
  readonly chance: Float64Array;
  readonly draw: number;
}

/** No unit of the opening has any. */
export const noItems = (units: number): OpenItemColumns => ({
  start: new Int32Array(units + 1),
  slot: new Int32Array(0),
  state: new Uint8Array(0),
  find: new Int32Array(0),
  cameAt: new Int32Array(0),
  chance: new Float64Array(0),
  draw: -1,
});

interface WithOrders {
  readonly programme: { readonly orders: OrderColumns };
}

/** What the planner calls a unit. */
export const buildName = ({ programme: { orders } }: WithOrders, number: number): string =>
  orders.names[number - 1] ?? String(number);

/** Whether any unit has a due date. */
export const hasDueDates = ({ programme: { orders } }: WithOrders): boolean =>
  orders.dueAfter < Infinity || orders.dueAt.some((time) => time < Infinity);
