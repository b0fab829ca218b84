import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { nearest } from '../values/nearest.js';
import { remembered } from '../values/raw.js';
import { isoDate } from './date.js';

/** True for an IANA zone (`Europe/Oslo`) or UTC. */
export const isZone = (zone: string): boolean =>
  remembered(known, zone, () => {
    try {
      new Intl.DateTimeFormat('en', { timeZone: zone });
      return /^[A-Za-z]/.test(zone);
    } catch {
      return false;
    }
  });
/** Asking takes milliseconds, and a scenario is read with each of its levers too. */
const known = new Map<string, boolean>();

const ZONE_WANTED = 'a time zone of the IANA list, such as "Europe/Oslo", or UTC';

/** A name of the IANA time zone database. */
export const zone = z.string({ error: ZONE_WANTED }).superRefine((text, context) => {
  if (isZone(text)) return;
  const suggestion = nearest(text, Intl.supportedValuesOf('timeZone'));
  context.addIssue({ code: 'custom', message: ZONE_WANTED, params: { suggestion } });
});

/**
 * Clock of one time zone over a span of days. The changes of its offset are asked of Temporal once, all else
 * is addition.
 *
 * An instant is minutes since 1970-01-01T00:00Z; a local minute is minutes since 1970-01-01T00:00 on the
 * zone's wall clock, that is day number * 1440 + minutes after midnight.
 */
export class ZoneClock {
  /** Instants from which an offset (local - instant, minutes) holds; the first is -Infinity. */
  private readonly changes: { readonly since: number; readonly offset: number }[] = [];

  /** `fromDay` and `toDay` are day numbers; the clock is right between them and a few days around. */
  constructor(
    readonly zone: string,
    fromDay: number,
    toDay: number,
  ) {
    let at = Temporal.PlainDate.from(isoDate(fromDay - 3)).toZonedDateTime(zone);
    this.changes.push({ since: -Infinity, offset: at.offsetNanoseconds / 6e10 });
    const last = (toDay + 3) * MINUTES_PER_DAY;
    for (;;) {
      const next = at.getTimeZoneTransition('next');
      if (next === null || next.epochMilliseconds / 60_000 > last) return;
      at = next;
      this.changes.push({ since: at.epochMilliseconds / 60_000, offset: at.offsetNanoseconds / 6e10 });
    }
  }

  /**
   * Instant of a local minute. A clock time that occurs twice is its first; one that does not exist moves on
   * by the gap (Temporal's 'compatible').
   */
  instant(localMinute: number): number {
    let before: number | undefined,
      instant = localMinute;
    for (const { since, offset } of this.changes) {
      if (before !== undefined && localMinute - before < since) break;
      instant = localMinute - offset;
      // In a gap the clock goes by the offset before it.
      if (before !== undefined && instant < since) instant = localMinute - before;
      before = offset;
    }
    return instant;
  }

  /** Local minute of an instant. */
  local(instant: number): number {
    return instant + (this.changes.findLast(({ since }) => since <= instant)?.offset ?? 0);
  }
}
