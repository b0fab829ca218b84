import { P_CALENDAR, SHUT, SHUT_SENT_BACK } from './floor/memory.js';
import type { Place } from './floor/place.js';
import {
  IN_CHANGE_ALONE,
  IN_CHANGEOVER,
  IN_REPAIR,
  WAIT_CREW,
  WAIT_NEEDS,
  WAIT_REPAIR,
  WAIT_REST,
  WAIT_SHIFT,
} from './floor/states.js';
import type { Step } from './floor/step.js';
import { AT_LOT } from './floor/step-flags.js';
import type { Unit } from './floor/unit.js';
import type { Other } from './model/happening.js';
import type { Held } from './numbered.js';
import type { Run } from './run.js';
import type { Truck } from './traffic/lane.js';

/** What the floor log knows of a unit or sub-assembly inside, or of one at a step side by side with others. */
export class Followed {
  phase: 'entered' | 'arrived' | 'started' | 'ended' = 'entered';
  truck: Truck | null = null;
  /** Repair work follows the step, or is waited for. */
  isInRepair = false;
  isScrapped = false;
  /** Bits of own parts that have been off it and have not joined it since. */
  off = 0;
  readonly held: Held = new Map();
  /** Of the start of its step: what joins then and what carries it. */
  joining: readonly Other[] = [];
  carriers: readonly Other[] = [];
  private since = NaN;
  private calendar = -1;

  constructor(
    readonly number: number,
    public step: Step,
  ) {}

  is({ number, step }: Unit): boolean {
    return this.number === number && this.step === step;
  }

  /**
   * It stands in a place where it is done: that of an earlier step, as there is no room ahead; one of a lot,
   * of which it is to be in the next; or the last of a pulse line. The state of the place alone does not say
   * so: ahead of a step that takes no time it is still that of the unit before.
   */
  isDoneIn({ station, isDone }: Place, step: Step): boolean {
    if (station !== step.station) return true;
    if (!isDone) return false;
    if ((step.flags & AT_LOT) !== 0) return true;
    return (
      station.line !== null && this.step === step && this.phase !== 'arrived' && this.phase !== 'entered'
    );
  }

  /** Its step begins, in the hours of the work at the place. */
  begins({ now, memory }: Run, { at }: Place, joining: readonly Other[], carriers: readonly Other[]): void {
    this.since = now;
    this.calendar = memory.ints[at + P_CALENDAR];
    this.joining = joining;
    this.carriers = carriers;
  }

  /** The first working minute from there on; overtime may still be added to the hours. */
  startsAt({ memory }: Run): number {
    if (this.calendar < 0) return this.since;
    return memory.calendars[this.calendar].nextWorking(this.since);
  }
}

/** It has not come in: it waits for its kit, or for room. */
export function isOutside(unit: Unit): boolean {
  if (unit.step.route.isMain) return unit.isOutside;
  const { place, truck, arrivedBy, asks, step } = unit;
  if (place !== null || truck !== null || arrivedBy !== null) return false;
  if (asks !== null && asks.station === null) return true;
  return [SHUT, SHUT_SENT_BACK].some((line) => step.buffer.line(line).includes(unit));
}

/** Work on the unit has begun: what it needs was there, and the place is set up for it. */
export const hasBegun = (phase: number): boolean =>
  phase !== WAIT_NEEDS &&
  phase !== WAIT_REST &&
  phase !== IN_CHANGE_ALONE &&
  phase !== IN_CHANGEOVER &&
  phase !== WAIT_SHIFT &&
  phase !== WAIT_CREW;

/** Of a place in a lot that runs, that of the place that leads it. */
export function phaseOf({ phase, station }: Place): number {
  const { lotMost, lotOpen, lotLead } = station;
  return lotMost > 0 && !lotOpen ? lotLead!.phase : phase;
}

export const isRepair = (place: Place | null): boolean =>
  place !== null && (place.phase === IN_REPAIR || place.phase === WAIT_REPAIR);

export function truckOf({ truck }: Followed): Other {
  const { lane } = truck!;
  return { kind: 'truck', lane: lane.id, index: lane.trucks.indexOf(truck!) };
}
