import { Calendar } from './floor/calendar.js';
import type { Model } from './model/model.js';

/** A model made ready once for all its replications. */
export interface Plan {
  readonly model: Model;
  readonly calendars: readonly Calendar[];
  /**
   * The first so many replications are watched closely, which takes time: their momentary bottleneck, and how
   * the line fills.
   */
  readonly closely: number;
}

export function prepare(model: Model, closely = 0): Plan {
  return { model, calendars: model.calendars.map((columns) => new Calendar(columns)), closely };
}
