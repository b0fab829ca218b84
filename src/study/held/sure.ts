/**
 * Share of builds that has to keep up where the planner names none: more of them than not. Our own
 * convention; near its limit a rate is missed by many builds in the weeks judged, and by none in the long
 * run, so a larger share would ask for less than the build can hold. The share is always told.
 */
export const USUAL_SURE = 0.5;
