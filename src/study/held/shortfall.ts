/**
 * A rate counts as held when no more than this share of the units asked is missing. Our own convention: at 4
 * a day it is one unit in twelve working days, which a plan makes good within its usual slack; there is no
 * standard for it.
 */
export const SHORTFALL_ALLOWED = 0.02;

/** Units that may be missing of those asked. At least one: shipments are whole units, the plan's are not. */
export const allowedUnits = (asked: number): number => Math.max(1, SHORTFALL_ALLOWED * asked);
