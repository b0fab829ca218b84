import { edited } from './file/edit-path.js';
import { withIncludes } from './file/include.js';
import { readSource } from './file/source.js';
import { checked } from './read.js';
import type { Assumption, Scenario } from './types/scenario.js';
import { isTime } from './values/forms.js';
import { isRawMap, textOf } from './values/raw.js';

/**
 * How far a value is varied to either side, as a share of it, by where it comes from. Our own convention; a
 * measured value is not varied.
 */
export const VARIED_BY = { guess: 0.2, estimate: 0.1 } as const;

/** An end of the range of a value: as a planner would write it, and the scenario with it. */
export interface VariedEnd {
  readonly value: string;
  readonly scenario: Scenario;
}
/**
 * A guess or estimate with its ends; undefined where the value cannot be there (a chance above 100 %, no
 * people).
 */
export interface Varied {
  readonly assumption: Assumption;
  readonly low: VariedEnd | undefined;
  readonly high: VariedEnd | undefined;
}

/**
 * Every guess and estimate of a sound scenario file, varied one at a time; `readFile` as in `readScenario`.
 */
export function varyAssumptions(
  text: string,
  file: string,
  readFile: (relativePath: string) => string,
): Varied[] {
  const { value: whole, assumptions } = withIncludes(readSource(text, file), readFile);
  const end = ({ at }: Assumption, varied: unknown): VariedEnd | undefined => {
    if (varied === undefined) return undefined;
    const { scenario, findings } = checked(edited(whole, at, varied), readFile);
    return scenario === undefined || findings.length > 0 ? undefined : { value: textOf(varied), scenario };
  };
  return assumptions.flatMap((assumption): Varied[] => {
    if (assumption.basis === 'measured') return [];
    const by = VARIED_BY[assumption.basis];
    return [
      {
        assumption,
        low: end(assumption, varied(assumption.raw, 1 - by)),
        high: end(assumption, varied(assumption.raw, 1 + by)),
      },
    ];
  });
}

const NUMBER = /^(-?\d+(?:\.\d+)?)( *)(%|[A-Za-z]+(?:\/[A-Za-z]+)?)?$/,
  ONE_IN = /^1 in (\d+)$/;

/**
 * A value times a factor: of a time all its times (the spread keeps its share of the mean), a chance to 100 %
 * at most, whole numbers without a unit by 1 at least, each number of a list. undefined for what cannot be
 * varied, such as observed times and words.
 */
export function varied(raw: unknown, factor: number): unknown {
  if (typeof raw === 'number')
    return Number.isInteger(raw) ? raw + wholeStep(raw, factor) : tidy(raw * factor);
  if (Array.isArray(raw)) {
    const all = raw.map((item) => varied(item, factor));
    return all.length === 0 || all.includes(undefined) ? undefined : all;
  }
  if (isRawMap(raw))
    return isTime(raw) && !('observed' in raw) && !('discrete' in raw) ? variedTimes(raw, factor) : undefined;
  if (typeof raw !== 'string') return undefined;
  const oneIn = ONE_IN.exec(raw.trim()),
    parts = NUMBER.exec(raw.trim());
  if (oneIn !== null) return `1 in ${Number(oneIn[1]) + wholeStep(Number(oneIn[1]), factor)}`;
  if (parts === null) return undefined;
  const [, text, gap, unit = ''] = parts,
    value = Number(text) * factor;
  return `${tidy(unit === '%' ? Math.min(100, value) : value)}${gap}${unit}`;
}

/** Numbers without a unit in a time are its spread and its shape, and stay. */
function variedTimes(time: unknown, factor: number): unknown {
  if (isRawMap(time))
    return Object.fromEntries(Object.entries(time).map(([key, inner]) => [key, variedTimes(inner, factor)]));
  return typeof time === 'string' ? (varied(time, factor) ?? time) : time;
}

const wholeStep = (value: number, factor: number): number =>
  Math.sign(factor - 1) * Math.max(1, Math.round(Math.abs(value * (factor - 1))));
/** Without the last digits of a float, so that 0.8 * 3 is 2.4. */
const tidy = (value: number): number => Number(value.toPrecision(12));
