import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { type EventKind, type FloorEvent, UNIT } from '../../../records/log/event.js';
import { dayNumber } from '../../../scenario/calendar/date.js';
import { ZoneClock } from '../../../scenario/calendar/zone.js';

/** Days in which a zone may change its clocks, around a log. */
const AROUND = 400;

/** What is seen of a log when it is read for the first time. */
export class FirstLook {
  first = Infinity;
  last = -Infinity;
  lastEntry = -Infinity;
  /** When the last unit was first heard of that was there before the log begins; how many of them. */
  lastOld = -Infinity;
  old = 0;
  readonly kinds = new Set<EventKind>();
  /** Steps, and types of objects, that the log tells of. */
  readonly steps = new Set<string>();
  readonly types = new Set<string>();
  private readonly inside = new Set<string>();

  /** @param firstStep of the units' route: whoever is first heard of there comes in */
  constructor(private readonly firstStep: string) {}

  take({ at, kind, object, type, step }: FloorEvent): void {
    this.first = Math.min(this.first, at);
    this.last = Math.max(this.last, at);
    this.kinds.add(kind);
    this.types.add(type);
    if (step !== '') this.steps.add(step);
    if (type !== UNIT) return;
    if (kind === 'ship' || kind === 'scrap') this.inside.delete(object);
    else if (!this.inside.has(object)) {
      this.inside.add(object);
      if (kind === 'enter' || step === this.firstStep) this.lastEntry = Math.max(this.lastEntry, at);
      else {
        this.old++;
        this.lastOld = Math.max(this.lastOld, at);
      }
    }
  }
}

/** Whether the log tells of such events: of what it never does nothing is compared. */
export const tellsOf = (
  { kinds, steps, types }: FirstLook,
  { kind, step, type }: Pick<FloorEvent, 'kind' | 'step' | 'type'>,
): boolean => kinds.has(kind) && types.has(type) && (step === '' || steps.has(step));

/** A period from the start of a day to the start of a day. */
export interface Period {
  /** Day numbers in the zone of the programme. */
  readonly fromDay: number;
  readonly toDay: number;
  /** Minutes since 1970-01-01T00:00Z. */
  readonly from: number;
  readonly to: number;
}

/**
 * The period that is compared: what is asked, else from the first day on which every unit of the floor is
 * known to the day after the last entry. What comes after that would be known to end when the log does.
 * @param from first day, @param to last day, ISO dates
 * @throws RangeError where nothing is left of it
 */
export function periodOf(look: FirstLook, zone: string, from?: string, to?: string): Period {
  if (!(look.last >= look.first))
    throw new RangeError('log: expected events of steps that the scenario has, got none');
  const around = (at: number): number => Math.floor(at / MINUTES_PER_DAY),
    clock = new ZoneClock(zone, around(look.first) - AROUND, around(look.last) + AROUND),
    dayOf = (at: number): number => Math.floor(clock.local(at) / MINUTES_PER_DAY);
  const fromDay =
      from !== undefined ? dayNumber(from) : look.old > 0 ? dayOf(look.lastOld) + 1 : dayOf(look.first),
    lastEntry = look.lastEntry > -Infinity ? look.lastEntry : look.last,
    toDay = to !== undefined ? dayNumber(to) + 1 : Math.min(dayOf(lastEntry) + 1, dayOf(look.last));
  if (toDay <= fromDay)
    throw new RangeError(
      'log: expected at least one whole day on which all units of the floor are known, got none; ' +
        'give --from and --to, or a longer log',
    );
  const instant = (day: number): number => clock.instant(day * MINUTES_PER_DAY);
  return { fromDay, toDay, from: instant(fromDay), to: instant(toDay) };
}
