import { type FloorEvent, UNIT } from '../../../records/log/event.js';

/** How far a unit is with the step that was last heard of. */
export type Phase = 'entered' | 'arrived' | 'started' | 'ended' | 'riding';

/** A unit on the floor, as far as the log tells. */
export interface Standing {
  readonly unit: string;
  /** Minutes since 1970-01-01T00:00Z; NaN: it was there before the log begins. */
  readonly enteredAt: number;
  readonly options: Readonly<Record<string, string>>;
  /** '' before its first step. */
  step: string;
  phase: Phase;
  /** When the phase began. */
  since: number;
}

const PHASES: Partial<Record<FloorEvent['kind'], Phase>> = {
  enter: 'entered',
  arrive: 'arrived',
  start: 'started',
  end: 'ended',
  load: 'riding',
  unload: 'ended',
};

/** The units that are on the floor, and nothing of those that are gone. */
export class Inside {
  readonly units = new Map<string, Standing>();
  /** How often each step was begun so far. */
  readonly begun = new Map<string, number>();
  /** Units that were shipped or scrapped. */
  gone = 0;

  take(event: FloorEvent): void {
    const { kind, object, step, at } = event;
    if (kind === 'start') this.begun.set(step, (this.begun.get(step) ?? 0) + 1);
    if (event.type !== UNIT) return;
    if (kind === 'ship' || kind === 'scrap') {
      this.units.delete(object);
      this.gone++;
      return;
    }
    let unit = this.units.get(object);
    if (unit === undefined) {
      unit = {
        unit: object,
        enteredAt: kind === 'enter' ? at : NaN,
        options: kind === 'enter' ? event.values : {},
        step,
        phase: 'entered',
        since: at,
      };
      this.units.set(object, unit);
    }
    const phase = PHASES[kind];
    if (phase === undefined) return;
    unit.phase = phase;
    unit.since = at;
    if (step !== '') unit.step = step;
  }
}
