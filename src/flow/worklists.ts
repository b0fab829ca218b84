import type { Claimant } from './claims/outside.js';
import type { Pool } from './claims/resource.js';
import type { Buffer } from './floor/buffer.js';
import type { SidePlace } from './floor/side-place.js';
import type { Station } from './floor/station.js';
import type { Route } from './floor/step.js';
import type { Lane } from './traffic/lane.js';
import type { PulseLine } from './traffic/pulse-lines.js';

/** What has to be looked at before the next event, see `drain` in `engine.ts`. */
export class Worklists {
  /** Something is listed below. */
  pending = false;
  // Last in first out; each object carries a mark that it is listed.
  readonly toFill: Buffer[] = [];
  readonly toStartLot: Station[] = [];
  readonly toServe: Lane[] = [];
  readonly toMatch: Pool[] = [];
  readonly toFeed: Route[] = [];
  readonly toPulse: PulseLine[] = [];
  /** Those whose needs were met. */
  readonly granted: Claimant[] = [];
  /** Sides of places at which a step begins, first in first out. */
  readonly toBegin: SidePlace[] = [];
  /** The unit that stood outside for the saturated source has entered, the next one is to be made. */
  sourceEntered = false;

  listFill(buffer: Buffer): void {
    if (buffer.listed) return;
    buffer.listed = true;
    this.pending = true;
    this.toFill.push(buffer);
  }

  listLot(station: Station): void {
    if (station.lotListed) return;
    station.lotListed = true;
    this.pending = true;
    this.toStartLot.push(station);
  }

  listServe(lane: Lane): void {
    if (lane.listed) return;
    lane.listed = true;
    this.pending = true;
    this.toServe.push(lane);
  }

  listMatch(pool: Pool): void {
    if (pool.listed) return;
    pool.listed = true;
    this.pending = true;
    this.toMatch.push(pool);
  }

  listPulse(line: PulseLine): void {
    if (line.listed) return;
    line.listed = true;
    this.pending = true;
    this.toPulse.push(line);
  }

  listFeed(route: Route): void {
    if (route.listed) return;
    route.listed = true;
    this.pending = true;
    this.toFeed.push(route);
  }
}
