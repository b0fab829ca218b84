import { Calendar } from './calendar.js';
import type { Model } from './model.js';

/** A model made ready once for all its replications. */
export interface Plan {
  readonly model: Model;
  readonly calendars: readonly Calendar[];
}

export function prepare(model: Model): Plan {
  return { model, calendars: model.calendars.map((columns) => new Calendar(columns)) };
}
