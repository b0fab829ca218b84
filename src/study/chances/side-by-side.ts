import { normalQuantile, proportion } from '../statistics/proportion.js';
import { counted } from './measured.js';
import { type MadeAndFound, say } from './two-looks.js';

/** Two inspections of the same units that know nothing of each other; nothing is put right in between. */
export interface SideBySide {
  readonly units: number;
  /** Found by the first, by the second, by both. */
  readonly first: number;
  readonly second: number;
  readonly both: number;
}

/**
 * Both chances from two independent looks: the first sees both / second of what the second sees (Lincoln
 * 1930; Petersen 1896), with the Wilson interval; how many units have it by Chapman (1951): (first + 1)
 * (second + 1) / (both + 1) - 1, with the variance of Seber (1970) and a normal interval, no fewer than were
 * seen.
 */
export function sideBySide({ units, first, second, both }: SideBySide, level = 0.95): MadeAndFound {
  if (!(both >= 0 && both <= Math.min(first, second) && first + second - both <= units))
    throw new RangeError(`two inspections: expected both <= first, second, got ${both}, ${first}, ${second}`);
  const seen = `The first found it on ${first}, the second on ${second} of ${counted(units, 'unit')}, both on ${both}.`;
  if (second === 0 || both === 0)
    return {
      made: null,
      detection: null,
      told: [`${seen} Without one seen by both it is open what both missed.`],
    };
  const { share, low, high } = proportion(both, second, level),
    many = ((first + 1) * (second + 1)) / (both + 1) - 1,
    variance =
      ((first + 1) * (second + 1) * (first - both) * (second - both)) /
      ((both + 1) * (both + 1) * (both + 2)),
    half = normalQuantile((1 + level) / 2) * Math.sqrt(variance),
    within = (n: number): number => Math.min(1, Math.max(first + second - both, n) / units),
    detection = { value: share, low, high, level },
    made = { value: within(many), low: within(many - half), high: within(many + half), level };
  return {
    made,
    detection,
    told: [
      `${seen} If neither knew of the other, the first finds ${say(detection)} of what is there, and ` +
        `${say(made)} of units have it.`,
    ],
  };
}
