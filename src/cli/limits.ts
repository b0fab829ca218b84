/** Highest numbers of replications that a command line may ask for. */

/** The 95 % interval of a mean is then as narrow as 0.02 standard deviations either way, finer than what goes into a scenario is known: a longer number is a slip. */
export const MOST_REPLICATIONS = 10_000;
/** A rate that is not settled gets up to four times as many, which is to stay within the same limit. */
export const MOST_REPLICATIONS_OF_RATE = MOST_REPLICATIONS / 4;
