import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { bankName } from '../lookup/ids.js';

/** Where units wait: ahead of a station, ahead of loading a lane, after its unloading. */
export interface Room {
  readonly kind: 'buffer' | 'bank' | 'arrival bank';
  readonly of: string;
}

/**
 * Its number among the buffers of a model, stations then lanes; an arrival bank is a station. -1: the model
 * has none, or one without a limit, which is no station.
 */
export function bufferOf({ stations, lanes }: Model, { kind, of }: Room): number {
  if (kind !== 'bank') return stations.names.indexOf(kind === 'buffer' ? of : bankName(of));
  const lane = lanes.names.indexOf(of);
  return lane < 0 ? -1 : stations.count + lane;
}

/**
 * The model of the same scenario with other waiting places, one number a room: as if it were compiled
 * anew. Null where that takes compiling: an arrival bank with a limit that comes or goes is a step more or
 * fewer.
 */
export function withRoom(model: Model, rooms: readonly Room[], places: readonly number[]): Model | null {
  const buffer = model.stations.buffer.slice(),
    banks = model.stations.places.slice(),
    bank = model.lanes.bank.slice();
  for (const [i, room] of rooms.entries()) {
    const at = bufferOf(model, room),
      count = places[i] ?? 0;
    if (room.kind === 'bank') bank[at - model.stations.count] = count;
    else if (room.kind === 'buffer') buffer[at] = count;
    else if (isOther(model, room.of, at, count)) return null;
    else if (at >= 0) banks[at] = count;
  }
  return {
    ...model,
    stations: { ...model.stations, buffer, places: banks },
    lanes: { ...model.lanes, bank },
  };
}

/** Whether an arrival bank of `count` places is of another sort than now: limited, without a limit, none. */
const isOther = ({ lanes }: Model, lane: string, at: number, count: number): boolean =>
  at >= 0
    ? count <= 0 || count >= UNLIMITED
    : lanes.endless[lanes.names.indexOf(lane)] === 1
      ? count < UNLIMITED
      : count > 0;
