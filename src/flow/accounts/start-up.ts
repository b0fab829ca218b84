import { type Model, UNLIMITED } from '../model/model.js';
import type { Locations } from './locations.js';

/** Parts of warm-up + length in which a line is looked at as it fills. */
export const START_UP_PARTS = 300;

/** Whether a run has no beginning and no end of its own: it is warmed up. A programme really starts empty. */
export const isSteady = ({ programme: { quantity, end } }: Model): boolean =>
  quantity >= UNLIMITED && end < Infinity;

/**
 * Units inside a steady-state run from its empty start on, by equal part of warm-up and length. It reads
 * accounts and changes none.
 */
export class StartUp {
  /** Unit-minutes by part. */
  readonly unitMinutes = new Float64Array(START_UP_PARTS);
  readonly partMinutes: number;
  private part = 0;
  private counted = 0;

  constructor(
    { programme: { end }, horizon }: Model,
    private readonly locations: Locations,
  ) {
    this.partMinutes = Math.min(end, horizon) / START_UP_PARTS;
  }

  get nextEdge(): number {
    return this.part < START_UP_PARTS ? (this.part + 1) * this.partMinutes : Infinity;
  }

  /** The clock has come to `now`, perhaps to an edge. */
  settle(now: number): void {
    if (this.part === START_UP_PARTS) return;
    const area = this.locations.totalAreaAt(now);
    this.unitMinutes[this.part] += area - this.counted;
    this.counted = area;
    if (now >= this.nextEdge) this.part++;
  }

  /** The accounts begin again from nothing. */
  startAfresh(): void {
    this.counted = 0;
  }
}
