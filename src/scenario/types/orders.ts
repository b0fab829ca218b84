import type { Finding } from '../file/problem.js';

/** One unit of which the planner knows something: a row of the build list, or a unit of the opening. */
export interface Order {
  /** The planner's own build number; undefined: it has none. */
  readonly build: string | undefined;
  /** Day of release, ISO; undefined: in its turn by the rate. */
  readonly release: string | undefined;
  /** Due at the end of this day in the programme's zone, ISO. */
  readonly due: string | undefined;
  /** Option -> value, as far as they are known; the others are drawn. */
  readonly options: Readonly<Record<string, string>>;
  /**
   * Step or lane of the unit's route at which it stands when the run starts; undefined: it is released in the
   * run.
   */
  readonly at: string | undefined;
  /** Where it was written, for problems found later. */
  readonly written: Pick<Finding, 'path' | 'source'>;
}

export interface Orders {
  /** Units of the opening, then rows of the build list. */
  readonly list: readonly Order[];
  /** From release to due; undefined: units without a date of their own are never due. */
  readonly dueAfterMin: number | undefined;
  /** The order of a scrapped unit is built again. */
  readonly replaceScrapped: boolean;
}

/**
 * Units that stand on the floor at the start, that have a day of release, and that are released by the rate
 * (undefined without a quantity).
 */
export function orderCounts(
  list: readonly Order[],
  quantity: number | undefined,
): { opening: number; dated: number; byRate: number | undefined } {
  const opening = list.filter(({ at }) => at !== undefined).length,
    dated = list.filter(({ release }) => release !== undefined).length;
  return { opening, dated, byRate: quantity === undefined ? undefined : quantity - opening - dated };
}
