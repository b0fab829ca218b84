export const PRECISION_MEASURES = ['throughput', 'lead-time', 'wip', 'cost'] as const;
export type PrecisionMeasure = (typeof PRECISION_MEASURES)[number];

/** How precise the measures asked for became. */
export interface PrecisionResult {
  /** Greatest relative error asked, 0..1; half-width / |mean| must be at most asked / (1 + asked). */
  readonly asked: number;
  /** Relative half-width null: there is no interval. */
  readonly measures: readonly {
    readonly name: PrecisionMeasure;
    readonly relativeHalfWidth: number | null;
    readonly reached: boolean;
  }[];
  readonly replications: number;
}
