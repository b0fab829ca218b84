import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { type LogTold, toldOfLog } from '../../../records/log-told.js';
import { isoDate } from '../../../scenario/calendar/date.js';
import { ZoneClock } from '../../../scenario/calendar/zone.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { Inside } from '../seen/inside.js';
import type { LogSource } from '../types.js';
import { lastStepOf, withShipping } from './log-read.js';
import { type Opening, openingOf } from './opening.js';
import { modelFrom } from './standing-start.js';

/** A moment as it is asked for: of UTC or by the clock of the programme's zone. */
export interface AskedMoment {
  /** Minutes since 1970-01-01T00:00. */
  readonly minutes: number;
  readonly isLocal: boolean;
}

/** Where the floor stands at a moment. */
export interface FloorAt {
  /** Day of it in the zone of the programme: ISO date, and its number. */
  readonly date: string;
  readonly day: number;
  /** Minutes since 1970-01-01T00:00Z. */
  readonly at: number;
  readonly opening: Opening;
  readonly inside: Inside;
  /** Units that came in before it, those that have left since among them. */
  readonly entered: ReadonlySet<string>;
  readonly shipped: number;
  readonly scrapped: number;
  readonly log: LogTold;
  readonly notes: readonly string[];
}

/** A year around a moment, in which its zone may change its clock. */
const AROUND = 400;

/** Reads a log up to a moment. */
export async function floorAt(
  log: LogSource,
  scenario: Scenario,
  { minutes, isLocal }: AskedMoment,
): Promise<FloorAt> {
  const about = Math.floor(minutes / MINUTES_PER_DAY),
    clock = new ZoneClock(scenario.programme.zone, about - AROUND, about + AROUND),
    at = isLocal ? clock.instant(minutes) : minutes,
    day = Math.floor(clock.local(at) / MINUTES_PER_DAY),
    { model } = modelFrom(scenario, day, day + 1),
    inside = new Inside(),
    entered = new Set<string>(),
    lastStep = lastStepOf(model);
  let shipped = 0,
    scrapped = 0,
    last = -Infinity;
  const kinds = new Set<FloorEvent['kind']>();
  // What comes later tells which events the log has at all.
  const read = await log.read((events) => {
    for (const event of events) {
      kinds.add(event.kind);
      if (event.at < at) last = Math.max(last, event.at);
    }
  });
  await log.read((events) => {
    for (const logged of events) {
      if (logged.at >= at) continue;
      for (const event of withShipping(logged, kinds, lastStep)) {
        inside.take(event);
        if (event.type !== UNIT) continue;
        if (event.kind === 'ship') shipped++;
        else if (event.kind === 'scrap') scrapped++;
        entered.add(event.object);
      }
    }
  });
  const opening = openingOf(inside, model),
    isOld = at - last > MINUTES_PER_DAY * OLD_DAYS;
  return {
    date: isoDate(day),
    day,
    at,
    opening,
    inside,
    entered,
    shipped,
    scrapped,
    log: toldOfLog(read),
    notes: [
      ...opening.notes,
      ...(isOld ? ['The log ends days before this moment: the floor is taken as it stood then.'] : []),
    ],
  };
}

/** A log that is older says nothing of today. */
const OLD_DAYS = 3;
