import { saySeen } from '../../file/problem.js';
import { stationsOf } from '../../lookup/placed.js';
import type { Finding } from '../../types/problem.js';
import type { Scenario } from '../../types/scenario.js';
import { own } from '../../values/raw.js';
import type { Standing } from './held.js';
import { senderOf, sendersTargets } from './items.js';

/** Room taken at a station or lane, and the step of the lot that gathers there. */
interface Taken {
  places: number;
  spaces: number;
  reworkSpaces: number;
  step: string | undefined;
}

/** Units of the opening for which there is no room; the standing in the order in which they are placed. */
export function* withoutRoom(scenario: Scenario, standing: readonly Standing[]): Iterable<Finding> {
  const taken = new Map<string, Taken>(),
    stations = stationsOf(scenario),
    full = new Set<string>();
  for (const stands of standing) {
    const { order, entry } = stands,
      isLane = entry.kind === 'lane',
      step = isLane ? entry.lane : entry.name,
      where = isLane ? `lane ${entry.lane}` : `station ${entry.at}`,
      lane = isLane ? own(scenario.lanes, entry.lane) : undefined,
      station = isLane ? undefined : stations.get(entry.at)?.station;
    if (lane === undefined && station === undefined) continue;
    const now = taken.get(where) ?? { places: 0, spaces: 0, reworkSpaces: 0, step: undefined };
    taken.set(where, now);
    const places = station === undefined ? 0 : (station.lot?.most ?? station.places),
      hasOwnSpaces = station?.reworkBuffer !== undefined && comesSentBack(scenario, stands),
      spaces = station === undefined ? lane?.bank : hasOwnSpaces ? station.reworkBuffer : station.buffer,
      kind = hasOwnSpaces ? 'reworkSpaces' : 'spaces';
    // A lot gathers units of one step; all others wait, and nobody passes those who wait, except into the
    // lot.
    const enters =
      now.places < places &&
      (station?.lot === undefined
        ? now.spaces + now.reworkSpaces === 0
        : now.step === undefined || now.step === step);
    if (enters) {
      now.places++;
      now.step = step;
    } else if (spaces === undefined || spaces === 'unlimited' || now[kind] < spaces) now[kind]++;
    else if (!full.has(where)) {
      full.add(where);
      const room =
        station === undefined
          ? `the bank ahead of it has ${spaces}`
          : `it has ${places} places and ${spaces} spaces ahead${hasOwnSpaces ? ' for units sent back' : ''}`;
      yield {
        ...order.written,
        wanted: `no more units at ${where} than it has room for; ${room}`,
        seen: `one more at ${saySeen(step)}`,
      };
    }
  }
}

/** It stands at a step to which the inspection that sent it back sends units: it goes first there. */
function comesSentBack(scenario: Scenario, stands: Standing): boolean {
  const sender = senderOf(scenario, stands);
  return sender !== undefined && sendersTargets(scenario, sender).includes(stands.index);
}
