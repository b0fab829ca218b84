import type { Condition, StationStep } from '../../scenario/types/steps.js';

/** What a scenario's routes look like from above: what stands on them, where side lines leave and join. */
export interface RouteMap {
  /** The unit's own route. */
  readonly main: Line;
  /** Feeders in the order of the scenario. */
  readonly sides: readonly SideLine[];
  /** What stays with a unit, and what moves units on together, in the order of the scenario. */
  readonly companions: readonly Companion[];
  /** Lanes by which units are only sent back. */
  readonly returns: readonly Trip[];
  /** Stations and lanes that stand on no route. */
  readonly idle: {
    readonly stations: readonly { readonly name: string; readonly site: string }[];
    readonly lanes: readonly string[];
    readonly supplies: readonly string[];
  };
}

export interface Line {
  readonly entries: readonly Entry[];
  readonly backs: readonly Back[];
}
export type Entry = Stop | Trip;

/** Steps that follow each other at one station. */
export interface Stop {
  readonly kind: 'stop';
  readonly station: string;
  readonly site: string;
  /** The station has stood on this or an earlier line. */
  readonly isAgain: boolean;
  /** As the planner wrote them; those done side by side one by one. */
  readonly steps: readonly MappedStep[];
}
export interface MappedStep {
  readonly step: StationStep;
  /** Done at the same time as the step before it. */
  readonly isBeside: boolean;
  /** Mean minutes of the work, of all passes, before any factor; then without people. */
  readonly workMin: number;
  readonly unattendedMin: number;
  /** Share of the units looked at with nothing found, by arithmetic; null: it looks for nothing. */
  readonly passes: number | null;
}

export interface Trip {
  readonly kind: 'trip';
  readonly lane: string;
  readonly from: string;
  readonly to: string;
  readonly when: Condition;
  /** Mean minutes. */
  readonly loadMin: number;
  readonly driveMin: number;
  readonly unloadMin: number;
  readonly returnMin: number;
}

/** Units sent back along a line, from a step that finds something to an earlier one or itself. */
export interface Back {
  readonly from: string;
  readonly to: string;
  /** Indices of the entries in the line. */
  readonly fromEntry: number;
  readonly toEntry: number;
  /** Share of the units looked at, by arithmetic. */
  readonly chance: number;
  /** Lanes to a step at another site; none to one at the same. */
  readonly by: readonly string[];
}

export interface SideLine extends Line {
  readonly name: string;
  readonly kind: 'stock' | 'own';
  /** Where own parts are taken off; null: a feeder that builds to a stock. */
  readonly leaves: Spot | null;
  /** Where its parts are used, in the order of the routes; at least one. */
  readonly joins: readonly Spot[];
}
/** A step on the unit's route (`side` null) or on that of a feeder. */
export interface Spot {
  readonly side: string | null;
  readonly entry: number;
  readonly step: string;
}

/** Carriers and teams from the step `from` to the step `to`; stations of a pulse line. */
export type Companion =
  | {
      readonly kind: 'carrier';
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly count: number;
      /** Mean minutes until it can be used again. */
      readonly returnMin: number;
    }
  | {
      readonly kind: 'team';
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly crew: string;
      readonly people: number;
    }
  | {
      readonly kind: 'pulse line';
      readonly name: string;
      readonly stations: readonly string[];
      readonly taktMin: number;
    };
