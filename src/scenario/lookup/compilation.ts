import type { NamedDraw } from '../../flow/model/model.js';
import type { Distribution } from '../../random/distribution.js';
import type { CalendarBook } from '../calendar/book.js';
import type { RunSpan } from '../programme/span.js';
import type { Scenario } from '../types/scenario.js';
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

/** Draw id of what takes no time. */
export const NO_DRAW = -1;

/** The draws of a model, numbered in the order in which they are asked for. */
export class Draws {
  readonly list: NamedDraw[] = [];
  private readonly taken = new Set<string>();
  /** Of a name asked for again: the turn that may be free. */
  private readonly turns = new Map<string, number>();

  /** A draw with a stream of its own; none for nothing and for a constant of zero. */
  add(name: string, distribution: Distribution | undefined): number {
    if (distribution === undefined || (distribution.kind === 'constant' && distribution.value === 0))
      return NO_DRAW;
    let stream = name,
      turn = this.turns.get(name) ?? 2;
    for (; this.taken.has(stream); turn++) stream = `${name} (${turn})`;
    if (stream !== name) this.turns.set(name, turn);
    this.taken.add(stream);
    return this.list.push({ name: stream, distribution }) - 1;
  }

  /** A uniform draw on 0 .. 1 that decides a chance. */
  chance(name: string): number {
    return this.add(name, { kind: 'uniform', low: 0, high: 1 });
  }
}
