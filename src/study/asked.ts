import type { ScenarioData } from '../scenario/data.js';
import type { Scenario } from '../scenario/types/scenario.js';
import type { ReplicatorOptions } from './run/replicator.js';

/** Confidence of the intervals, if no other is asked for. */
export const LEVEL = 0.95;

/** Guesses and estimates that are varied at most, if nothing else is asked: more than a picture shows. */
export const VALUES = 50;

/** What every study that chooses its replications itself is asked. Its results do not depend on `workers`. */
export interface StudyOptions extends Omit<ReplicatorOptions, 'worker'> {
  readonly scenario: Scenario;
  /** The same as data, with which its guesses and estimates can be varied; left out: none is. */
  readonly data?: ScenarioData | undefined;
  /** Name of the scenario's file; folders are left out of the results. */
  readonly file: string;
  /** Confidence of the intervals, default `LEVEL`. */
  readonly level?: number | undefined;
  /** A new stage begins, in words. */
  readonly onStage?: ((text: string) => void) | undefined;
  /** Told whenever more is known of how many replications there will be. */
  readonly onForecast?: ((toCome: ToCome) => void) | undefined;
}

/** Replications of a study in all, those done among them; `most` is null where that is not known. */
export interface ToCome {
  readonly least: number;
  readonly most: number | null;
}

/** @throws RangeError if a value is no whole number, or below the least */
export function wholeNumber(what: string, value: number, least = 1): void {
  if (!(Number.isInteger(value) && value >= least))
    throw new RangeError(`${what}: expected a whole number of at least ${least}, got ${value}; give one`);
}
