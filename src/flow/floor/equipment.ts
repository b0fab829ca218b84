import type { Resource } from '../claims/resource.js';
import type { Model } from '../model/model.js';
import type { Place } from './place.js';
import type { Station } from './station.js';

/**
 * What can fail: the equipment of one place, or of a station with lots; a piece of what stations share. It is
 * up when no cause holds it down.
 */
export class Equipment {
  /** Causes for which it is down: ways to fail that wait for their repair, and outages. */
  causes = 0;
  readonly modes: FailureMode[] = [];
  // Of the task under way: operating minutes charged in advance, since when, in which calendar, and the
  // failure that will break it off.
  charged = 0;
  since = NaN;
  calendar = -1;
  next: FailureMode | null = null;
  /** Of a shared piece: a place has claimed it. */
  isInUse = false;

  /**
   * @param owner number of the station, or number of stations + that of the resource
   * @param station null of what stations share
   * @param shared what it is one piece of; null of a station's
   * @param places that are down with it; of a shared piece, the one that has it, or had it when it failed
   * @param index among the pieces of `shared`
   */
  constructor(
    readonly owner: number,
    readonly station: Station | null,
    readonly shared: Resource | null,
    readonly places: Place[],
    readonly index: number,
  ) {}

  /** False until the day from which on it is there. */
  get isThere(): boolean {
    return this.shared === null
      ? this.places.some(({ isThere }) => isThere)
      : this.index < this.shared.amount;
  }

  get isDown(): boolean {
    return this.causes > 0;
  }
}

/** One way in which a piece of equipment fails. */
export class FailureMode {
  /** Operating minutes left to the next failure; not for those by the clock. */
  left = NaN;
  isDown = false;
  failedAt = NaN;

  /**
   * @param source number among the disruptions
   * @param row of `model.failures`
   */
  constructor(
    readonly source: number,
    readonly row: number,
    readonly equipment: Equipment,
    readonly byClock: boolean,
  ) {}
}

/**
 * Gives stations that may go down their equipment: one piece a place, one for all places where units are
 * taken in lots.
 */
export function furnishEquipment({ failures, outages }: Model, stations: readonly Station[]): Equipment[] {
  return stations
    .filter(({ id }) => failures.station.includes(id) || outages.station.includes(id))
    .flatMap((station) => {
      const { places } = station;
      station.equipment =
        station.lotMost > 0
          ? [new Equipment(station.id, station, null, [...places], 0)]
          : places.map((place, p) => new Equipment(station.id, station, null, [place], p));
      for (const piece of station.equipment) for (const place of piece.places) place.equipment = piece;
      // A place that comes free may be down.
      station.leaveTheLongWay();
      return station.equipment;
    });
}

/** Gives equipment that stations share, and that can fail, its pieces. */
export function furnishShared({ failures, stations }: Model, resources: readonly Resource[]): Equipment[] {
  return resources.flatMap((resource, r) => {
    if (!failures.resource.includes(r)) return [];
    return (resource.shared!.pieces = Array.from(
      { length: resource.amount },
      (_, p) => new Equipment(stations.count + r, null, resource, [], p),
    ));
  });
}
