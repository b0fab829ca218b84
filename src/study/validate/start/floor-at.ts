import type { Model } from '../../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import type { LogRead } from '../../../records/log/cleaned.js';
import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { type LogTold, toldOfLog } from '../../../records/log-told.js';
import { isoDate } from '../../../scenario/calendar/date.js';
import { ZoneClock } from '../../../scenario/calendar/zone.js';
import { runSpan } from '../../../scenario/programme/span.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { sayClock } from '../../../scenario/values/quantity.js';
import { count } from '../../format.js';
import { Inside } from '../seen/inside.js';
import type { LogSource } from '../types.js';
import { lastStepOf, withShipping } from './log-read.js';
import { Histories } from './open-items.js';
import { type Opening, openingOf } from './opening.js';
import { earlierThan } from './standing-start.js';
import { Stocks } from './stocks.js';

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
  /** Minutes after midnight by its clock. */
  readonly minute: number;
  /** Both in words: `2027-08-16 06:00`. */
  readonly said: string;
  /** Minutes since 1970-01-01T00:00Z. */
  readonly at: number;
  readonly opening: Opening;
  readonly inside: Inside;
  /** Units that came in before it, those that have left since among them. */
  readonly entered: ReadonlySet<string>;
  readonly shipped: number;
  readonly scrapped: number;
  readonly log: LogTold;
  /** The scenario with the stocks of the moment as those at its start. */
  readonly stocked: Scenario;
  readonly notes: readonly string[];
}

/** A year around a moment, in which its zone may change its clock. */
const AROUND = 400;

/**
 * Reads a log up to a moment.
 * Rejects with a RangeError for a moment that is outside the programme, or ahead of the log.
 */
export async function floorAt(
  log: LogSource,
  { scenario, model }: { readonly scenario: Scenario; readonly model: Model },
  { minutes, isLocal }: AskedMoment,
): Promise<FloorAt> {
  const { origin, end } = runSpan(scenario),
    about = Math.floor(minutes / MINUTES_PER_DAY),
    clock = new ZoneClock(scenario.programme.zone, about - AROUND, about + AROUND),
    at = isLocal ? clock.instant(minutes) : minutes,
    day = Math.floor(clock.local(at) / MINUTES_PER_DAY),
    earlier = earlierThan(scenario, day),
    inside = new Inside(),
    histories = new Histories(),
    stocks = new Stocks(model),
    entered = new Set<string>(),
    lastStep = lastStepOf(earlier.model);
  let shipped = 0,
    scrapped = 0,
    first = Infinity,
    last = -Infinity;
  const said = (instant: number): string => saidLocal(Math.floor(clock.local(instant)));
  if (at < origin || at >= origin + end)
    throw new RangeError(
      `at: expected a moment of the programme, which begins on ${scenario.programme.start}` +
        `${end < Infinity ? ` and ends before ${said(origin + end)}` : ''}, got ${said(at)}`,
    );
  // A time that the clock skips in spring comes back as another; so does one that it shows twice.
  if (isLocal && clock.local(at) !== minutes)
    throw new RangeError(
      `at: expected a time that clocks in ${scenario.programme.zone} show, got one that they skip, ` +
        saidLocal(minutes),
    );
  const kinds = new Set<FloorEvent['kind']>();
  // What comes later tells which events the log has at all.
  const read = await log.read((events) => {
    for (const event of events) {
      kinds.add(event.kind);
      first = Math.min(first, event.at);
      if (event.at < at) last = Math.max(last, event.at);
    }
  });
  if (last === -Infinity)
    throw new RangeError(
      first < Infinity
        ? `at: expected a moment after ${said(first)}, when the log begins, got ${said(at)}`
        : 'log: expected events of steps that the scenario has, got none',
    );
  await log.read((events) => {
    for (const logged of events) {
      if (logged.at >= at) continue;
      for (const event of withShipping(logged, kinds, lastStep)) {
        inside.take(event);
        histories.take(event);
        stocks.take(event);
        if (event.type !== UNIT) continue;
        if (event.kind === 'ship') shipped++;
        else if (event.kind === 'scrap') scrapped++;
        // The order of a scrapped unit may be built again.
        if (event.kind === 'scrap' && scenario.programme.orders.replaceScrapped) entered.delete(event.object);
        else entered.add(event.object);
      }
    }
  });
  const opening = openingOf({ inside, histories, at, tells: kinds.has('find') }, earlier),
    stocked = stocks.asAt(scenario, origin, at),
    isOld = at - last > MINUTES_PER_DAY * OLD_DAYS;
  return {
    date: isoDate(day),
    day,
    minute: Math.floor(clock.local(at)) - day * MINUTES_PER_DAY,
    said: said(at),
    at,
    opening,
    inside,
    entered,
    shipped,
    scrapped,
    log: toldOfLog(read),
    stocked: stocked.scenario,
    notes: [
      ...toldOf(read),
      ...opening.notes,
      ...stocked.notes,
      ...(isOld ? ['The log ends days before this moment: the floor is taken as it stood then.'] : []),
    ],
  };
}

const saidLocal = (local: number): string =>
  `${isoDate(Math.floor(local / MINUTES_PER_DAY))} ${sayClock(local % MINUTES_PER_DAY)}`;

/** What was wrong with the rows of the log, and what became of them. */
function toldOf(read: LogRead | null): string[] {
  if (read === null) return [];
  const unknown = read.unknownSteps.map(
    ({ name, count: rows, near }) =>
      `The scenario has no step "${name}", and ${count(rows, 'row')} of the log with it ` +
      `${rows === 1 ? 'is' : 'are'} left out${near === undefined ? '' : `: did you mean "${near}"?`}`,
  );
  const others = read.oddities.reduce((sum, { count: rows }) => sum + rows, 0),
    named = read.unknownSteps.reduce((sum, { count: rows }) => sum + rows, 0);
  return [
    ...unknown.slice(0, MOST_NAMES),
    ...(others > named
      ? [`Odd in the log: ${count(others - named, 'row')}; \`rateproof validate\` tells what is wrong.`]
      : []),
  ];
}

const MOST_NAMES = 5;

/** A log that is older says nothing of today. */
const OLD_DAYS = 3;
