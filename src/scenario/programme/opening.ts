import type { Order } from '../types/programme.js';
import type { RouteEntry } from '../types/steps.js';
import type { Finding } from '../types/problem.js';
import { dayNumber } from '../calendar/date.js';
import { workingDayRule } from '../calendar/days.js';
import { own, siteOfStation } from '../whole/placed.js';
import { nearest } from '../values/nearest.js';
import { saySeen } from '../file/problem.js';
import { releaseSite } from './rates.js';
import type { Scenario } from '../types/scenario.js';

const nameOf = (entry: RouteEntry): string => (entry.kind === 'lane' ? entry.lane : entry.name);

/**
 * Orders that cannot be met: released on a day off, standing at a step that they never come to, or where
 * there is no room.
 */
export function orderFindings(scenario: Scenario): Finding[] {
  return [...dates(scenario), ...opening(scenario)];
}

function dates(scenario: Scenario): Finding[] {
  const {
      start,
      until,
      orders: { list },
    } = scenario.programme,
    { calendar } = releaseSite(scenario);
  const works = workingDayRule(calendar === undefined ? undefined : own(scenario.calendars, calendar));
  return list.flatMap(({ release, due, written }): Finding[] => {
    if (due !== undefined && due < start)
      return [
        {
          ...written,
          wanted: `a due day not before the start of the programme, ${start}`,
          seen: saySeen(due),
        },
      ];
    if (release === undefined) return [];
    if (release < start)
      return [
        {
          ...written,
          wanted: `a day of release not before the start of the programme, ${start}`,
          seen: saySeen(release),
        },
      ];
    if (until !== undefined && release >= until)
      return [
        {
          ...written,
          wanted: `a day of release before the end of the run, ${until}`,
          seen: saySeen(release),
        },
      ];
    if (!works(dayNumber(release)))
      return [
        {
          ...written,
          wanted: `a day of release that is a working day of ${calendar ?? 'the first site'}`,
          seen: saySeen(release),
        },
      ];
    return [];
  });
}

function opening(scenario: Scenario): Finding[] {
  const { route } = scenario,
    found: Finding[] = [],
    standing: { order: Order; index: number }[] = [];
  for (const order of scenario.programme.orders.list) {
    if (order.at === undefined) continue;
    const index = route.findIndex((entry) => nameOf(entry) === order.at),
      entry = route[index];
    if (entry === undefined) {
      found.push({
        ...order.written,
        wanted: "no step or lane of this name in the unit's route",
        seen: saySeen(order.at),
        suggestion: nearest(order.at, route.map(nameOf)),
      });
      continue;
    }
    for (const [option, values] of Object.entries(entry.when)) {
      const value = own(order.options, option);
      if (value !== undefined && values.includes(value)) continue;
      found.push({
        ...order.written,
        wanted: `a unit with ${option}: ${values.join(' or ')}, as only such units come to ${order.at}`,
        seen: value === undefined ? `no ${option}` : saySeen(value),
      });
    }
    standing.push({ order, index });
  }
  // In the order in which the engine places them.
  return [
    ...found,
    ...withoutRoom(
      scenario,
      standing.sort((a, b) => b.index - a.index),
    ),
  ];
}

/** Room taken at a station or lane, and the step of the lot that gathers there. */
interface Taken {
  places: number;
  spaces: number;
  step: string | undefined;
}

function withoutRoom(scenario: Scenario, standing: readonly { order: Order; index: number }[]): Finding[] {
  const taken = new Map<string, Taken>(),
    siteOf = siteOfStation(scenario),
    full = new Set<string>();
  return standing.flatMap(({ order, index }): Finding[] => {
    const entry = scenario.route[index]!,
      where = entry.kind === 'lane' ? `lane ${entry.lane}` : `station ${entry.at}`;
    const site = entry.kind === 'lane' ? undefined : siteOf.get(entry.at),
      lane = entry.kind === 'lane' ? own(scenario.lanes, entry.lane) : undefined;
    const station =
      site === undefined || entry.kind === 'lane' ? undefined : own(scenario.sites[site]!.stations, entry.at);
    if (lane === undefined && station === undefined) return [];
    const now = taken.get(where) ?? { places: 0, spaces: 0, step: undefined };
    taken.set(where, now);
    const places = station === undefined ? 0 : (station.lot?.most ?? station.places),
      spaces = station === undefined ? lane!.bank : station.buffer;
    // A lot gathers units of one step; all others wait, and nobody passes those who wait, except into the
    // lot.
    const enters =
      now.places < places &&
      (station?.lot === undefined ? now.spaces === 0 : now.step === undefined || now.step === nameOf(entry));
    if (enters) {
      now.places++;
      now.step = nameOf(entry);
      return [];
    }
    if (spaces === undefined || now.spaces < spaces) {
      now.spaces++;
      return [];
    }
    if (full.has(where)) return [];
    full.add(where);
    const room =
      station === undefined
        ? `the bank ahead of it has ${spaces}`
        : `it has ${places} places and ${spaces} spaces ahead`;
    return [
      {
        ...order.written,
        wanted: `no more units at ${where} than it has room for; ${room}`,
        seen: `one more at ${saySeen(order.at)}`,
      },
    ];
  });
}
