import { log } from '../../random/elementary.js';
import { normalQuantile, type Proportion, proportion } from '../statistics/proportion.js';
import { counted, roughPercent } from './measured.js';

/** An estimate with an interval. */
export interface Bounded {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
}

/** How likely units have a defect, and how likely the first inspection finds it. */
export interface MadeAndFound {
  /** Chance that a unit has it; null where the counts do not tell. */
  readonly made: Bounded | null;
  /** Chance that the first inspection finds it on a unit that has it. */
  readonly detection: Bounded | null;
  readonly told: readonly string[];
}

/**
 * One inspection tells one number: found = made x detection. So made is at least what was found, detection
 * may be anything from there to 100 %, and counts of this inspection alone never tell them apart.
 */
export function oneLook(found: Proportion): MadeAndFound {
  return {
    made: null,
    detection: null,
    told: [
      `Found on ${roughPercent(found.share)} of units: how often it is made times how often it is seen. That is ` +
        `${roughPercent(found.share)} made if all are seen, ${roughPercent(Math.min(1, found.share / 0.8))} if ` +
        `80 % are. Counts of one inspection cannot tell which; a later inspection of the same units can.`,
    ],
  };
}

/** Two inspections one after the other: what the first finds is put right before the second. */
export interface InTurn {
  /** Units that passed both. */
  readonly units: number;
  /** Found by the first; found by the second on units where the first found none. */
  readonly first: number;
  readonly second: number;
}

/**
 * What the second inspection is taken to find of what the first has missed: the same share as the first, or
 * a share that is known, 1 for all. The counts cannot tell it.
 */
export type SecondFinds = 'the same share' | number;

/**
 * Both chances from two inspections in a row, by maximum likelihood: of each unit the first finds it with the
 * chance m d, only the second with m (1 - d) e. With e = d this is the two-catch removal estimate, d = 1 -
 * second / first (Seber & Le Cren 1967, J. Animal Ecology 36(3), 631-643; Zippin 1956, Biometrics 12); with e
 * known d = first / (first + second / e).
 *
 * Of those found the share s of the first is s = d / (d + (1 - d) e) whatever m is, so that the Wilson
 * interval of s gives that of d. The interval of m is that of the profile likelihood (Venzon & Moolgavkar
 * 1988, Appl. Statist. 37, 87-94).
 */
export function inTurn({ units, first, second }: InTurn, finds: SecondFinds, level = 0.95): MadeAndFound {
  if (!(first >= 0 && second >= 0 && first + second <= units))
    throw new RangeError(
      `two inspections: expected first + second <= units, got ${first}, ${second}, ${units}`,
    );
  const seen = `The first found it on ${first} of ${counted(units, 'unit')}, the second on ${second} more.`;
  if (first + second === 0)
    return { made: null, detection: null, told: [`${seen} Nothing found tells nothing of what is missed.`] };
  const share = proportion(first, first + second, level),
    detection = {
      value: detectionAt(share.share, finds),
      low: detectionAt(share.low, finds),
      high: detectionAt(share.high, finds),
      level,
    };
  if (detection.value <= 0)
    return {
      made: null,
      detection: { ...detection, value: 0 },
      told: [
        `${seen} With two inspections alike the second finds fewer than the first: either they differ, or ` +
          `nearly everything is missed. Say what share the second finds, or count a third.`,
      ],
    };
  const made = madeOf({ units, first, second }, detection.value, finds, level),
    taken =
      finds === 'the same share'
        ? 'the second is taken to find the same share as the first'
        : `the second is taken to find ${roughPercent(finds)} of what is left`;
  return {
    made,
    detection,
    told: [
      `${seen} The first finds ${say(detection)} of what is there, and ${say(made)} of units have it: ${taken}.`,
      ...(made.high >= 1 ? ['So few tell no upper limit of how many have it: count longer.'] : []),
    ],
  };
}

/** For a sentence: an estimate and its interval. */
export const say = ({ value, low, high }: Bounded): string =>
  `${roughPercent(value)} (${roughPercent(low)} to ${roughPercent(high)})`;

/** D of the share s = d / (d + (1 - d) e); below 0 is cut. */
const detectionAt = (s: number, finds: SecondFinds): number =>
  finds === 'the same share' ? (s <= 0.5 ? 0 : 2 - 1 / s) : (s * finds) / (1 - s + s * finds);

function madeOf(counts: InTurn, detection: number, finds: SecondFinds, level: number): Bounded {
  const { units, first, second } = counts,
    e = finds === 'the same share' ? detection : finds,
    value = Math.min(1, (first + second) / units / (detection + (1 - detection) * e)),
    z = normalQuantile((1 + level) / 2),
    best = profile(counts, value, finds),
    within = (m: number): boolean => 2 * (best - profile(counts, m, finds)) <= z * z;
  return {
    value,
    low: edge(value, 0, within),
    high: within(1) ? 1 : edge(value, 1, within),
    level,
  };
}

const HALVINGS = 50;

/** Where `within` ends between a value inside and one outside. */
function edge(inside: number, outside: number, within: (m: number) => boolean): number {
  let [near, far] = [inside, outside];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (near + far) / 2;
    if (within(middle)) near = middle;
    else far = middle;
  }
  return near;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Greatest log-likelihood over d at a chance m, by golden section: it has one top. */
function profile({ units, first, second }: InTurn, m: number, finds: SecondFinds): number {
  const at = (d: number): number => {
    const e = finds === 'the same share' ? d : finds,
      p = m * d,
      q = m * (1 - d) * e;
    return times(first, p) + times(second, q) + times(units - first - second, 1 - p - q);
  };
  let [low, high] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const a = high - GOLDEN * (high - low),
      b = low + GOLDEN * (high - low);
    if (at(a) >= at(b)) high = b;
    else low = a;
  }
  return Math.max(at((low + high) / 2), at(1));
}

const times = (count: number, chance: number): number =>
  count === 0 ? 0 : chance > 0 ? count * log(chance) : -Infinity;
