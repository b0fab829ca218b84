import { hasAll } from '../claims/carriers.js';
import { insertRequest, match } from '../claims/claims.js';
import { OutsideClaim } from '../claims/outside.js';
import { askSupplies } from '../claims/supplies.js';
import type { Buffer } from '../floor/buffer.js';
import { LINES, SHUT, SHUT_SENT_BACK } from '../floor/memory.js';
import type { Place } from '../floor/place.js';
import type { Station } from '../floor/station.js';
import type { Step } from '../floor/step.js';
import { ASKS_AHEAD } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { leave, standIn } from './room.js';

/**
 * Rule 2, a step that waits for its parts in the buffer: its unit takes a place together with its parts,
 * carriers and teams, all or none. Until then it stands in a space, or where it came from, and others may
 * pass it.
 */

/** Whether the unit claims more than a place here; units of the opening stand in one already. */
export const asksAhead = (run: Run, unit: Unit, step: Step): boolean =>
  (step.flags & ASKS_AHEAD) !== 0 && !run.isOpening && !hasAll(unit, step.ahead!);

/** The place that the unit has got with all it asks for; null: it waits, and is to be put into a line. */
export function askAhead(run: Run, unit: Unit, step: Step, station: Station): Place | null {
  const claim = new OutsideClaim(unit, step.ahead!, station),
    pool = step.asked.pool!;
  unit.asks = claim;
  station.asking.push(claim);
  claim.askedAt = run.now;
  askSupplies(run, claim);
  insertRequest(pool, claim);
  if (claim.isDown) {
    run.listMatch(pool);
    return null;
  }
  match(run, pool);
  if (claim.place === null) return null;
  run.granted.splice(run.granted.indexOf(claim), 1);
  return take(claim, station);
}

/**
 * Goes through those who wait for places that are free, in order: who asks for more gets what is there; the
 * first who wants only a place is called, out of its line. Null: nobody is left who could go.
 */
export function callReady(run: Run, buffer: Buffer, station: Station): Unit | null {
  for (const line of LINES)
    for (const unit of buffer.line(line)) {
      if (unit.asks !== null) {
        if (unit.asks.place !== null) continue;
        station.turn = unit;
        match(run, unit.step.asked.pool!);
        station.turn = null;
      } else {
        buffer.takeOut(unit, line);
        if (isShut(line)) leave(run, unit);
        return unit;
      }
      if (station.freePlace === null) return null;
    }
  return null;
}

/** A unit goes from its line into the place that it was given. */
export function comeIn(run: Run, claim: OutsideClaim, station: Station): void {
  const { unit } = claim,
    { buffer } = station,
    line = LINES.find((each) => buffer.line(each).includes(unit))!,
    place = take(claim, station);
  buffer.takeOut(unit, line);
  if (isShut(line)) leave(run, unit);
  else run.listFill(buffer);
  standIn(run, unit, place);
}

const isShut = (line: number): boolean => line === SHUT || line === SHUT_SENT_BACK;

function take(claim: OutsideClaim, { asking }: Station): Place {
  asking.splice(asking.indexOf(claim), 1);
  claim.unit.asks = null;
  claim.unit.isReady = true;
  return claim.place!;
}
