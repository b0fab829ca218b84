/** Mean work in process of a steady-state run from its empty start, and where the start-up ends by MSER-5. */
export interface WarmUpResult {
  /** Replications pooled, hours of one part, and mean units inside by part of warm-up + length. */
  readonly replications: number;
  readonly partHours: number;
  readonly wip: readonly number[];
  readonly givenHours: number;
  /** The scenario left it to be found by the same rule. */
  readonly isFound: boolean;
  /** Start-up by MSER-5; null: the run is too short for it to be trusted. */
  readonly cutHours: number | null;
  /** Too short: the units inside between the warm-up given and the cut differ from those after it, by more than chance; not known: they do not, but there is no cut to be trusted. */
  readonly verdict: 'long enough' | 'too short' | 'not known';
}
