import type { Model } from '../../../flow/model/model.js';
import { SEND_BACK } from '../../../flow/model/quality.js';

interface Taken {
  places: number;
  spaces: number;
  reworkSpaces: number;
  step: number;
}

/**
 * Room at stations, in places and the spaces ahead, and in the banks ahead of lanes, as the reader of a
 * scenario counts it: asked for unit by unit, the farthest along the route first.
 */
export class Room {
  private readonly taken = new Map<string, Taken>();
  constructor(private readonly model: Model) {}

  /** @param sentBy the inspection that sent the unit back; -1 */
  take(step: number, sentBy: number): boolean {
    const { steps, stations, lanes } = this.model,
      station = steps.station[step] ?? -1,
      lane = steps.lane[step] ?? -1,
      key = station >= 0 ? `station ${station}` : `lane ${lane}`,
      now = this.taken.get(key) ?? { places: 0, spaces: 0, reworkSpaces: 0, step };
    this.taken.set(key, now);
    if (station < 0) return now.spaces++ < (lanes.bank[lane] ?? 0);
    const lot = stations.lotMost[station] ?? 0,
      places = lot > 0 ? lot : (stations.places[station] ?? 0),
      own = stations.reworkBuffer[station] ?? -1;
    if (
      now.places < places &&
      (lot > 0 ? now.places === 0 || now.step === step : now.spaces + now.reworkSpaces === 0)
    ) {
      now.places++;
      now.step = step;
      return true;
    }
    return own >= 0 && this.isTarget(step, sentBy)
      ? now.reworkSpaces++ < own
      : now.spaces++ < (stations.buffer[station] ?? 0);
  }

  private isTarget(step: number, sentBy: number): boolean {
    const { steps, thens } = this.model;
    for (let find = steps.findStart[sentBy] ?? 0; find < (steps.findStart[sentBy + 1] ?? 0); find++) {
      const then = steps.findThen[find] ?? -1;
      if (thens.kind[then] === SEND_BACK && thens.target[then] === step) return true;
    }
    return false;
  }
}
