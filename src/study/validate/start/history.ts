import { type FloorEvent, UNIT } from '../../../records/log/event.js';

/** What happened to the units that are on the floor, and nothing of those that are gone. */
export class Histories {
  readonly units = new Map<string, FloorEvent[]>();

  take(event: FloorEvent): void {
    const { kind, object, type } = event;
    if (type !== UNIT) return;
    if (kind === 'ship' || kind === 'scrap') {
      this.units.delete(object);
      return;
    }
    const known = this.units.get(object);
    if (known === undefined) this.units.set(object, [event]);
    else if (kind === 'arrive' || kind === 'end' || kind === 'find') known.push(event);
  }
}
