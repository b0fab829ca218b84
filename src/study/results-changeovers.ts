import type { Estimate } from './results.js';

/** Changeovers at a station, by the option that it is set up for. */
export interface ChangeoverResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  readonly option: string;
  readonly values: readonly string[];
  /** Changeovers per 100 units that took a place, and their work in hours per week of the calendar. */
  readonly per100Units: Estimate;
  readonly hoursPerWeek: Estimate;
  /** Pairs of values that occurred: how often, and the mean work of one, minutes. */
  readonly pairs: readonly {
    readonly from: string;
    readonly to: string;
    readonly per100Units: Estimate;
    readonly minutes: Estimate;
  }[];
  /** null where nothing is known of the first replication. */
  readonly strip: ChangeoverStrip | null;
}

/** A week of one replication, or less: who stood on each place. Hours since `start`; below 0 before it. */
export interface ChangeoverStrip {
  readonly replication: number;
  /** Local date and time at which it begins, its length, and its days. */
  readonly start: string;
  readonly hours: number;
  readonly days: readonly string[];
  readonly stays: readonly StripStay[];
}
export interface StripStay {
  /** From 1. */
  readonly place: number;
  /** Index into `values`; so is `changedFrom`, null without changeover. */
  readonly value: number;
  readonly from: number;
  /** null: still there at the end of the run. */
  readonly to: number | null;
  readonly changedFrom: number | null;
  readonly changeFrom: number | null;
  readonly changeTo: number | null;
}
