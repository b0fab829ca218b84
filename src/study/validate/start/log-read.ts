import type { Calendar } from '../../../flow/floor/calendar.js';
import type { Model } from '../../../flow/model/model.js';
import { type EventKind, type FloorEvent, UNIT } from '../../../records/log/event.js';
import { type Frame, stepIds } from '../seen/frame.js';
import { Inside } from '../seen/inside.js';
import { LogWatch } from '../seen/watch.js';
import type { Earlier } from './done.js';
import { Histories } from './open-items.js';
import { type Opening, openingOf } from './opening.js';
import type { Period } from './period.js';
import type { Begun, Entry } from './standing-start.js';

/** A log without events of units that leave: who is done with the last step is gone. */
export function* withShipping(
  event: FloorEvent,
  kinds: ReadonlySet<EventKind>,
  lastStep: string,
): Generator<FloorEvent> {
  yield event;
  if (!kinds.has('ship') && event.kind === 'end' && event.type === UNIT && event.step === lastStep)
    yield { ...event, kind: 'ship', step: '' };
}

export const lastStepOf = ({ routes, steps }: Model): string =>
  steps.names[(routes.firstStep[1] ?? steps.count) - 1] ?? '';

/** The real log: how the floor stands when the period begins, who comes in, and what is estimated. */
export class RealLog {
  opening: Opening | null = null;
  readonly entries: Entry[] = [];
  /** As it was at the start of the period. */
  readonly before = new Inside();
  readonly watch: LogWatch;
  private readonly histories = new Histories();
  readonly frame: Frame;
  private readonly old = new Set<string>();
  private readonly inside = new Set<string>();
  private readonly scrapped = new Set<string>();
  private readonly lastStep: string;

  constructor(
    private readonly begun: Begun,
    private readonly earlier: Earlier,
    calendars: readonly Calendar[],
    { from, to }: Period,
    private readonly kinds: ReadonlySet<EventKind>,
  ) {
    const { model, origin } = begun,
      workingDays = Math.max(1, begun.workingDays.size);
    this.frame = { model, calendars, origin, from, to, workingDays, stepOf: stepIds(model), old: this.old };
    this.watch = new LogWatch(this.frame);
    this.lastStep = lastStepOf(model);
  }

  take(logged: FloorEvent): void {
    for (const event of withShipping(logged, this.kinds, this.lastStep)) {
      const { at, type } = event,
        { from, to } = this.frame;
      if (at >= to) return;
      if (at < from) {
        this.before.take(event);
        this.histories.take(event);
      } else {
        this.begin();
        if (type === UNIT) this.follow(event);
      }
      this.watch.take(event);
    }
  }

  end(): void {
    this.begin();
    this.watch.end();
  }

  private begin(): void {
    if (this.opening !== null) return;
    const { before, histories, kinds, frame } = this;
    this.opening = openingOf(
      { inside: before, histories, at: frame.from, tells: kinds.has('find') },
      this.earlier,
    );
    for (const unit of this.before.units.keys()) {
      this.old.add(unit);
      this.inside.add(unit);
    }
  }

  private follow({ kind, object, at, values }: FloorEvent): void {
    if (kind === 'ship' || kind === 'scrap') {
      this.inside.delete(object);
      if (kind === 'scrap') this.scrapped.add(object);
      return;
    }
    if (this.inside.has(object)) return;
    this.inside.add(object);
    // The order of a scrapped unit may be built again: the simulated line does so by itself.
    if (this.scrapped.has(object) && this.begun.model.programme.orders.replaceScrapped) return;
    this.entries.push({ unit: object, at, options: kind === 'enter' ? values : {} });
  }
}
