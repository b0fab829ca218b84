import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { Finds, looksOf } from './finds.js';
import type { Frame } from './frame.js';
import { Line } from './line.js';
import { People } from './people.js';
import { Stays } from './stays.js';

/**
 * All that is estimated of a floor log in a period, from its events in order of time. Events before the
 * period tell how the floor stands at its start. Real and simulated logs go through the same.
 */
export class LogWatch {
  readonly stays: Stays;
  readonly line: Line;
  readonly finds: Finds;
  readonly people: People;

  constructor(private readonly frame: Frame) {
    this.stays = new Stays(frame);
    this.line = new Line(frame);
    this.finds = new Finds(frame, looksOf(frame));
    this.people = new People(frame);
  }

  take(event: FloorEvent): void {
    if (event.at >= this.frame.to) return;
    const step = event.step === '' ? undefined : this.frame.stepOf.get(event.step);
    this.stays.take(event, step);
    this.finds.take(event, step);
    this.people.take(event, step);
    if (event.type === UNIT) this.line.take(event, step);
  }

  end(): this {
    this.people.end();
    return this;
  }
}
