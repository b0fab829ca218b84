import type { Model } from '../../../flow/model/model.js';
import { HOLD_NONE } from '../../../flow/model/quality.js';
import type { FloorEvent } from '../../../records/log/event.js';
import { Moments } from '../../statistics/moments.js';
import type { Frame } from './frame.js';
import { OvertimeSeen } from './overtime-seen.js';

const NO_CALENDAR = -1;

/** Something is done there: it is no bank, no group of steps side by side and no hold. */
export const isDone = ({ steps, stations, sideBySide, quality }: Model, step: number): boolean =>
  quality.hold[step] === HOLD_NONE &&
  stations.isBank[steps.station[step] ?? -1] !== 1 &&
  !sideBySide.group.includes(step);

/** Roads, and what runs unattended to its end: they go on by night. */
export const isByTheClock = ({ steps }: Model, step: number): boolean =>
  (steps.lane[step] ?? -1) >= 0 ||
  ((steps.workDraw[step] ?? -1) < 0 && (steps.processDraw[step] ?? -1) >= 0 && steps.attendedEnd[step] === 0);

/** Minutes that steps take and that units wait for them: state for those under way alone. */
export class Stays {
  /** By step: from start to end on its calendar, of visits at which nothing was found. */
  readonly minutes: readonly Moments[];
  /** By step: from arrival to start, on its calendar. */
  readonly waiting: readonly Moments[];
  private readonly going = new Map<string, { readonly at: number; isFound: boolean }>();
  private readonly arrived = new Map<string, { readonly step: string; readonly at: number }>();

  private readonly overtime: OvertimeSeen;

  constructor(private readonly frame: Frame) {
    this.overtime = new OvertimeSeen(frame);
    this.minutes = frame.model.steps.names.map(() => new Moments());
    this.waiting = frame.model.steps.names.map(() => new Moments());
  }

  take(event: FloorEvent, id: number | undefined): void {
    const { kind, at, step } = event,
      object = `${event.type}:${event.object}`,
      visit = `${object}\n${step}`;
    if (kind === 'ship' || kind === 'scrap') this.arrived.delete(object);
    if (id === undefined) return;
    if (kind === 'start' || kind === 'end') this.overtime.note(this.calendarOf(id), at);
    switch (kind) {
      case 'arrive':
        this.arrived.set(object, { step, at });
        break;
      case 'load':
      case 'start': {
        const came = this.arrived.get(object);
        if (came?.step === step) {
          this.add(this.waiting, id, came.at, at);
          this.arrived.delete(object);
        }
        this.going.set(visit, { at, isFound: false });
        break;
      }
      case 'find': {
        const visited = this.going.get(visit);
        if (visited !== undefined) visited.isFound = true;
        break;
      }
      case 'unload':
      case 'end': {
        const visited = this.going.get(visit);
        this.going.delete(visit);
        if (visited !== undefined && !visited.isFound) this.add(this.minutes, id, visited.at, at);
        break;
      }
      default:
    }
  }

  /** Only what begins in the period counts. */
  private add(all: readonly Moments[], step: number, from: number, to: number): void {
    if (from >= this.frame.from) all[step]?.add(this.overtime.minutes(this.calendarOf(step), from, to));
  }

  private calendarOf(step: number): number {
    const { model } = this.frame;
    return isByTheClock(model, step) ? NO_CALENDAR : (model.steps.workCalendar[step] ?? NO_CALENDAR);
  }
}
