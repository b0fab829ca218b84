import type { Model } from '../model/model.js';
import type { Place } from './place.js';
import type { Station } from './station.js';

/**
 * What can fail: the equipment of one place, or of a station with lots. It is up when no cause holds it down.
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

  constructor(
    readonly station: Station,
    readonly places: readonly Place[],
  ) {}

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
          ? [new Equipment(station, places)]
          : places.map((place) => new Equipment(station, [place]));
      for (const piece of station.equipment) for (const place of piece.places) place.equipment = piece;
      // A place that comes free may be down.
      station.leaveTheLongWay();
      return station.equipment;
    });
}
