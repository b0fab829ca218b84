/** Minutes of a day of 24 hours. */
export const MINUTES_PER_DAY = 1440;
