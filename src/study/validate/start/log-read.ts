import type { Calendar } from '../../../flow/floor/calendar.js';
import type { Model } from '../../../flow/model/model.js';
import { HOLD_NOTED } from '../../../flow/model/quality.js';
import { REWORK_ONLY } from '../../../flow/model/steps.js';
import { type EventKind, type FloorEvent, UNIT } from '../../../records/log/event.js';
import { type Frame, stepIds } from '../seen/frame.js';
import { Inside } from '../seen/inside.js';
import { LogWatch } from '../seen/watch.js';
import type { Earlier } from './done.js';
import { Histories } from './open-items.js';
import { type Opening, openingOf } from './opening.js';
import type { FirstLook, Period } from './period.js';
import type { Begun, Entry } from './standing-start.js';

/** The last step that every unit does, and those behind it. */
export interface LastStep {
  readonly name: string;
  readonly behind: ReadonlySet<string>;
}

/** @param told steps that the log tells of; left out: any */
export function lastStepOf({ routes, steps, quality }: Model, told?: ReadonlySet<string>): LastStep {
  const behind = new Set<string>();
  let step = (routes.firstStep[1] ?? steps.count) - 1;
  const isSure = (): boolean =>
    steps.rework[step] !== REWORK_ONLY &&
    quality.hold[step] !== HOLD_NOTED &&
    (steps.sampleN[step] ?? 0) === 0 &&
    steps.whenStart[step] === steps.whenStart[step + 1] &&
    told?.has(steps.names[step] ?? '') !== false;
  for (; step > 0 && !isSure(); step--) behind.add(steps.names[step] ?? '');
  return { name: steps.names[step] ?? '', behind };
}

/**
 * A log without events of units that leave: who is done with the last step that all do is gone, and what may
 * follow is not looked at.
 */
export function* withShipping(
  event: FloorEvent,
  kinds: ReadonlySet<EventKind>,
  { name, behind }: LastStep,
): Generator<FloorEvent> {
  if (kinds.has('ship') || event.type !== UNIT) yield event;
  else if (!behind.has(event.step)) {
    yield event;
    if (event.kind === 'end' && event.step === name) yield { ...event, kind: 'ship', step: '' };
  }
}

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
  private readonly taken = new Set<string>();
  private readonly lastStep: LastStep;

  constructor(
    private readonly begun: Begun,
    private readonly earlier: Earlier,
    calendars: readonly Calendar[],
    { from, to, fromDay }: Period,
    private readonly looked: Pick<FirstLook, 'kinds' | 'steps'>,
  ) {
    const { model, origin } = begun,
      workingDays = Math.max(1, begun.workingDays.size);
    this.frame = {
      model,
      calendars,
      origin,
      from,
      to,
      fromDay,
      workingDays,
      stepOf: stepIds(model),
      old: this.old,
    };
    this.watch = new LogWatch(this.frame);
    this.lastStep = lastStepOf(model, looked.steps);
  }

  take(logged: FloorEvent): void {
    for (const event of withShipping(logged, this.looked.kinds, this.lastStep)) {
      const { at, type } = event,
        { from, to } = this.frame;
      if (at >= to) return;
      // What stands there when a scenario starts comes in with its first minute.
      if (at <= from && this.opening === null) {
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
    const { before, histories, looked, frame } = this;
    this.opening = openingOf(
      { inside: before, histories, at: frame.from, tells: looked.kinds.has('find') },
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
      else if (!this.looked.kinds.has('ship')) this.taken.add(object);
      return;
    }
    // Taken for gone where the log does not tell of it, it may come back to be mended.
    if (this.inside.has(object) || this.taken.has(object)) return;
    this.inside.add(object);
    // The order of a scrapped unit may be built again: the simulated line does so by itself.
    if (this.scrapped.has(object) && this.begun.model.programme.orders.replaceScrapped) return;
    this.entries.push({ unit: object, at, options: kind === 'enter' ? values : {} });
  }
}
