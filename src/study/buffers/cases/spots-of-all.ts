import type { Scenario } from '../../../scenario/types/scenario.js';
import type { WhatIf } from '../../../scenario/what-ifs.js';
import { defined } from '../../lists.js';
import { type Spot, spotsOf } from '../spots.js';

/** Changes of the scenario under which the same layout has to do. */
export interface Cases {
  /** Name of their file, without folders. */
  readonly file: string;
  readonly whatIfs: readonly WhatIf[];
}

/** More would make a table that nobody reads, and intervals that tell nothing. */
export const MOST_CASES = 12;

/**
 * The spots among which places are shared out, with the fewest places that every case can run with. A
 * RangeError names a case in which a spot is missing or has other places: what is to be found would be given.
 */
export function spotsOfAll(scenario: Scenario, named: readonly string[] = [], cases?: Cases): Spot[] {
  const spots = spotsOf(scenario, named),
    whatIfs = cases?.whatIfs ?? [];
  if (whatIfs.length > MOST_CASES)
    throw new RangeError(
      `cases: expected at most ${MOST_CASES} what-ifs, got ${whatIfs.length}; keep those that matter most`,
    );
  const others = whatIfs.map((whatIf) => spotsIn(whatIf, spots));
  return spots.map((spot, s) => ({
    ...spot,
    least: Math.max(spot.least, ...others.map((theirs) => defined(theirs[s]).least)),
  }));
}

/** The same spots in a case, in the same order. */
function spotsIn({ name, scenario }: WhatIf, spots: readonly Spot[]): Spot[] {
  return spots.map((spot) => {
    const theirs = found(scenario, spot);
    if (theirs?.present === spot.present) return theirs;
    const seen = theirs === undefined ? 'no limited ones' : `${theirs.present} in place of ${spot.present}`;
    throw new RangeError(
      `cases: expected what-ifs that leave the places at "${spot.name}" as they are, got ${seen} in ` +
        `"${name}"; leave that change out, as places are what is looked for, or name other spots with --at`,
    );
  });
}

/** undefined: the route of the case does not come by, or the places there have no limit. */
function found(scenario: Scenario, { name }: Spot): Spot | undefined {
  try {
    return spotsOf(scenario, [name])[0];
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
