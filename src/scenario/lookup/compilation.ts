import type { CalendarBook } from '../calendar/book.js';
import type { RunSpan } from '../programme/span.js';
import type { Scenario } from '../types/scenario.js';
import type { Draws } from './draws.js';
import type { Ids } from './ids.js';
import type { LaidRoutes } from './laid.js';

/** What every part of a scenario is compiled with. Draws and calendars are numbered as they are asked for. */
export interface Compilation {
  readonly scenario: Scenario;
  readonly ids: Ids;
  readonly laid: LaidRoutes;
  readonly span: RunSpan;
  readonly book: CalendarBook;
  readonly draws: Draws;
}
