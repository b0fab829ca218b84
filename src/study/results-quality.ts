import type { Estimate } from './results.js';

/** Results of rules 8 to 10. */
export interface QualityResults {
  /** A row a kind of defect and the step that makes it, in the order of the routes; those that were never made are left out. */
  readonly defects: readonly DefectResult[];
  /** A row a site where items are made. */
  readonly escapes: readonly EscapeResult[];
  readonly holds: readonly HoldResult[];
  readonly comparisons: readonly ComparisonResult[];
  /** Work done again and repairs, person-hours a replication. */
  readonly rework: readonly { readonly crew: string; readonly site: string; readonly hours: Estimate }[];
}

export interface DefectResult {
  readonly kind: string;
  readonly madeAt: string;
  /** Items a replication. */
  readonly made: Estimate;
  /** Where they are found for the first time, route by route; steps where none was are left out. */
  readonly foundAt: readonly {
    readonly step: string;
    readonly then: 'repaired' | 'sent back' | 'scrapped' | 'carried';
    /** Of the items made. */
    readonly share: Estimate;
    /** Work of the repairs that followed, a replication; of what is carried, at the hold. */
    readonly repairHours: Estimate;
  }[];
  /** In all, a replication. */
  readonly repairHours: Estimate;
  /** Of the items made: on units shipped, never found; and found, noted and still open. */
  readonly shippedWith: Estimate;
  readonly shippedNoted: Estimate;
}
export interface EscapeResult {
  readonly site: string;
  /** Items for each unit shipped: made in the site; of these found there, found in another, shipped without being found. */
  readonly madePerUnit: Estimate;
  readonly foundHerePerUnit: Estimate;
  readonly foundElsewherePerUnit: Estimate;
  readonly shippedWithPerUnit: Estimate;
}
export interface HoldResult {
  readonly name: string;
  readonly site: string;
  /** Of the units that came to it. */
  readonly heldShare: Estimate;
  /** Units held or on the way to a place there, mean over time. */
  readonly units: Estimate;
  /** From the end of the step before to the release, units released. */
  readonly daysMean: Estimate;
  readonly daysP95: Estimate;
  /** Items a replication. */
  readonly mended: Estimate;
}
export interface ComparisonResult {
  readonly first: string;
  readonly second: string;
  /** Units that both have seen, a replication. */
  readonly units: Estimate;
  /** Shares of these, first visits: nothing found (good) or something (bad), at the first and at the second. */
  readonly goodGood: Estimate;
  readonly goodBad: Estimate;
  readonly badGood: Estimate;
  readonly badBad: Estimate;
  /** Share of good-good and bad-bad together. */
  readonly agreement: Estimate;
  /** Extra work where they differ, hours a replication. */
  readonly extraHours: Estimate;
}
