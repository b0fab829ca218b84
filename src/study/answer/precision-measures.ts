/** Measures that can be asked to be precise. A leaf: the command line reads it before any study is loaded. */
export const PRECISION_MEASURES = ['throughput', 'lead-time', 'wip', 'cost'] as const;
export type PrecisionMeasure = (typeof PRECISION_MEASURES)[number];

/** Fewer replications say too little of the spread to stop on: skewed means then miss the truth too often. */
export const LEAST_FOR_PRECISION = 30;
