import { LEAVE_FULL, LEAVE_TIMETABLE } from '../../../flow/model/lanes.js';
import type { Model } from '../../../flow/model/model.js';
import { CREW } from '../../../flow/model/resources.js';
import { countWhere } from '../../../flow/model/time.js';
import type { DailyMinutes } from '../days.js';
import type { Demand } from '../demand.js';
import { meanDraw } from '../means.js';
import { spotsOf } from '../spots.js';
import { availability, stationMinutes } from '../station.js';
import { type Leg, load } from './alone.js';
import { tripsBackFrom } from './ways-back.js';

/** Legs so far; the hours in which units come to the next, a calendar; how many come together. */
interface Way {
  readonly legs: Leg[];
  hours: number;
  together: number;
}

/**
 * What a unit goes through while it keeps a carrier or team, minutes per unit released. Of the visits of a
 * step those count that have it (`isWith`). At `askedPerDay` units a working day others fill its loads and
 * lots (null: no rate is asked, and none are waited for).
 */
export function wayOf(
  model: Model,
  asks: Demand,
  daily: DailyMinutes,
  {
    id,
    isWith,
    askedPerDay,
  }: {
    readonly id: number;
    readonly isWith: (step: number) => number;
    readonly askedPerDay: number | null;
  },
): Leg[] {
  const { companions, resources, steps, stations, lanes } = model,
    from = companions.from[id],
    isTeam = resources.kind[companions.resource[id]] === CREW,
    way: Way = { legs: [], hours: -1, together: 1 };
  /** Until others have come, evenly over the hours of the step before, or the longest wait is over. */
  const fill = (step: number, share: number, least: number, most: number, longest: number): void => {
    const perUnit = asks.visits[step],
      { hours } = way;
    if (askedPerDay === null || !(perUnit > 0) || most <= 1) return;
    const apart = (calendar: number): number => daily.of(calendar) / (askedPerDay * perUnit),
      { together, wait } = load(apart(-1), least, most, longest),
      isTimedOut = together < most && longest > (together - 1) * apart(-1);
    // The others come in the hours of the step before; the longest wait goes by the clock.
    way.legs.push(
      isTimedOut
        ? { calendar: null, minutes: share * perUnit * wait }
        : {
            calendar: daily.calendar(hours),
            minutes: (share * perUnit * apart(hours) * (together - 1)) / 2,
          },
    );
    way.together = together;
  };
  const travel = (step: number, share: number): void => {
    const lane = steps.lane[step],
      visits = asks.visits[step],
      departures = lanes.timetable[lane];
    if (lanes.rule[lane] === LEAVE_TIMETABLE) {
      const times = countWhere(departures, (time) => time < daily.spanMinutes),
        atEach = (askedPerDay ?? 0) * visits * (daily.workingDays / Math.max(1, times));
      way.legs.push({ departures, share: share * visits });
      way.together = Math.min(lanes.capacity[lane], Math.max(1, atEach));
    } else
      fill(
        step,
        share,
        1,
        lanes.capacity[lane],
        lanes.rule[lane] === LEAVE_FULL ? Infinity : lanes.wait[lane],
      );
    goBy(model, daily, lane, share * visits, way);
  };
  for (let step = from; step <= companions.to[id]; step++) {
    const station = steps.station[step],
      lane = steps.lane[step];
    if (lane >= 0) travel(step, isWith(step));
    else if (station >= 0 && model.sideBySide.group[step] < 0) {
      const most = Math.min(stations.lotMost[station], stations.places[station]);
      if (most > 0 && step > from)
        fill(step, isWith(step), stations.lotLeast[station], most, stations.lotWait[station]);
      standAt(model, asks, daily, step, isWith(step), way);
      if (most === 0) way.together = 1;
    }
    if (isTeam) continue;
    // Some go back from here, with it, and come again to what is before.
    const { hours, together } = way;
    for (const trip of tripsBackFrom(model, step)) travel(trip, isWith(step));
    [way.hours, way.together] = [hours, together];
  }
  return way.legs;
}

function goBy(
  { lanes, draws }: Model,
  daily: DailyMinutes,
  lane: number,
  share: number,
  { legs }: Way,
): void {
  for (const [calendars, times] of [
    [lanes.loadCalendar, lanes.loadDraw],
    [lanes.driveCalendar, lanes.driveDraw],
    [lanes.unloadCalendar, lanes.unloadDraw],
  ] as const)
    legs.push({
      calendar: daily.calendar(calendars[lane]),
      minutes: share * meanDraw({ draws }, times[lane]),
    });
}

/**
 * Those who come together stand in line; then work in its hours, at a pulse line no less than its takt, then
 * what runs by the clock.
 */
function standAt(
  model: Model,
  asks: Demand,
  daily: DailyMinutes,
  step: number,
  share: number,
  way: Way,
): void {
  const { steps, stations, pulseLines } = model,
    station = steps.station[step],
    { place, attended, unattended } = stationMinutes(model, asks, step),
    fit = availability(model, station, daily),
    line = spotsOf(model).lineOf[station],
    takt = line < 0 ? 0 : asks.visits[step] * pulseLines.takt[line];
  if (steps.workCalendar[step] >= 0) way.hours = steps.workCalendar[step];
  const calendar = daily.calendar(steps.workCalendar[step]),
    ahead = stations.lotMost[station] > 0 ? 0 : (way.together - 1) / 2,
    inLine = (ahead * Math.max(place / fit, takt)) / stations.places[station];
  way.legs.push({ calendar, minutes: share * (inLine + Math.max(attended / fit, takt - unattended)) });
  if (unattended > 0) way.legs.push({ calendar: null, minutes: share * unattended });
  if (steps.attendedEnd[step] === 1) way.legs.push({ calendar, minutes: INSTANT });
}

/** The end of a process waits for an instant of working time. */
const INSTANT = 1e-6;
