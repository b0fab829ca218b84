import { LEVEL } from '../asked.js';
import { type Bounded, inTurn, type SecondFinds } from '../chances/two-looks.js';
import { sumOf } from '../statistics/sums.js';
import type { DefectCounts, LookCounts } from './counts.js';
import { type ChancePlace, oneChance } from './places.js';

/** What share an inspection finds of what is there, as those after it show. */
export interface Detection {
  readonly finds: Bounded | null;
  /** On so many it was seen, by this inspection or a later one. */
  readonly n: number;
  /** They are too few to take the place of what the scenario has. */
  readonly isFew: boolean;
  readonly told: readonly string[];
}

/** Of fewer defects a share is known to no more than a third or so; the bound is our own. */
const FEWEST = 10;

/**
 * From what is found here, and later on those that came and passed, over all steps that make it.
 * @param shares what inspections find of what is there, by step: those after this one are asked of, and its
 *   own is put in, as found or else as the scenario has it
 */
export function detectionAt(
  step: string,
  all: readonly DefectCounts[],
  place: ChancePlace | undefined,
  shares: Map<string, number>,
): Detection {
  const seen = all.flatMap((counts) => {
      const turn = turnAt(counts.looks, step);
      return turn === undefined ? [] : [turn];
    }),
    later = new Set(seen.flatMap((turn) => turn.later)),
    said = oneChance(place),
    taken = takenOf([...later], shares);
  if (later.size === 0 || taken === undefined) {
    if (said !== undefined) shares.set(step, said);
    return { finds: null, n: 0, isFew: false, told: [] };
  }
  const [units, first, second] = [
      sumOf(seen, (turn) => turn.units),
      sumOf(seen, (turn) => turn.first),
      sumOf(seen, (turn) => turn.second),
    ],
    { detection, told } = inTurn({ units, first, second }, taken, LEVEL),
    isFew = first + second < FEWEST && said !== undefined,
    share = isFew ? said : (detection?.value ?? said);
  if (share !== undefined) shares.set(step, share);
  return {
    finds: detection,
    n: first + second,
    isFew,
    told: [
      `${[step, ...later].join(', then ')}: ${told.join(' ')}`,
      ...(isFew
        ? [
            `That is of ${first + second}, and fewer than ${FEWEST} tell too little: what ${step} finds ` +
              'stays as the scenario has it.',
          ]
        : []),
    ],
  };
}

/** What inspections find together of what is left to them; undefined where more than one is not known. */
export function takenOf(
  later: readonly string[],
  shares: ReadonlyMap<string, number>,
): SecondFinds | undefined {
  if (later.length === 0) return undefined;
  const known = later.map((step) => shares.get(step));
  if (known.every((share) => share !== undefined && share > 0))
    return 1 - known.reduce<number>((missed, share) => missed * (1 - (share ?? 0)), 1);
  return later.length === 1 ? 'the same share' : undefined;
}

/** Units that came to an inspection, found there, and found later; those that are not followed drop out. */
export function turnAt(looks: readonly LookCounts[], step: string) {
  const at = looks.findIndex((look) => look.step === step),
    here = looks[at];
  if (here === undefined) return undefined;
  const units = sumOf(here.rows, (row) => row.units),
    first = sumOf(here.rows, (row) => row.found);
  let missed = 1;
  const later = looks.slice(at + 1);
  for (const { rows } of later) {
    const came = sumOf(rows, (row) => row.units);
    if (came > 0) missed *= 1 - sumOf(rows, (row) => row.found) / came;
  }
  return {
    ...{ units, first, second: Math.round((units - first) * (1 - missed)) },
    later: later.map((look) => look.step),
  };
}
