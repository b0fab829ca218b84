import { type ScenarioData, scenarioWith } from './data.js';
import { edited } from './file/edit-path.js';
import type { Assumption, Scenario } from './types/scenario.js';
import { amountOf, withUnit } from './values/amount.js';
import { isTime } from './values/forms.js';
import { isRawMap, mapOf, textOf } from './values/raw.js';

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

/** The guesses and estimates of a scenario, in the order of the file, and how each is varied. */
export interface ToVary {
  readonly assumptions: readonly Assumption[];
  /** Reads the scenario again with either end, which takes a moment in a large one. */
  readonly vary: (assumption: Assumption) => Varied;
}

/** What can be varied of a scenario, one at a time; `data`: the same as data. */
export function toVary({ assumptions }: Scenario, data: ScenarioData): ToVary {
  const end = ({ at }: Assumption, varied: unknown): VariedEnd | undefined => {
    if (varied === undefined) return undefined;
    const { scenario } = scenarioWith(data, edited(data.value, at, varied));
    return scenario === undefined ? undefined : { value: textOf(varied), scenario };
  };
  return {
    assumptions: assumptions.filter(({ basis }) => basis !== 'measured'),
    vary: (assumption) => {
      const by = variedBy(assumption);
      return {
        assumption,
        low: end(assumption, varied(assumption.raw, 1 - by)),
        high: end(assumption, varied(assumption.raw, 1 + by)),
      };
    },
  };
}

const variedBy = ({ basis }: Assumption): number => (basis === 'measured' ? 0 : VARIED_BY[basis]);

/**
 * By how much more something is loaded at the worse end of a value, as a share: whole numbers go down by
 * one at least, so a place of two is half of what there is.
 */
export function changeOf(assumption: Assumption): number {
  const by = variedBy(assumption),
    of = (raw: unknown): number =>
      Array.isArray(raw)
        ? Math.max(by, ...raw.map(of))
        : typeof raw === 'number' && Number.isInteger(raw)
          ? Math.max(by, 1 / Math.max(1, Math.abs(raw) - 1))
          : by;
  return of(assumption.raw);
}

const ONE_IN = /^1 in (\d+)$/;

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
  if (isRawMap(raw)) {
    if (Array.isArray(raw['mixture'])) return variedMixture(raw['mixture'], factor);
    return isTime(raw) && !('observed' in raw) && !('discrete' in raw) ? variedTimes(raw, factor) : undefined;
  }
  if (typeof raw !== 'string') return undefined;
  const oneIn = ONE_IN.exec(raw.trim()),
    parts = amountOf(raw);
  if (oneIn !== null) return `1 in ${Number(oneIn[1]) + wholeStep(Number(oneIn[1]), factor)}`;
  if (parts === undefined) return undefined;
  const value = parts.number * factor;
  return withUnit({ ...parts, number: tidy(parts.unit.trim() === '%' ? Math.min(100, value) : value) });
}

/** Numbers without a unit in a time are its spread and its shape, and stay. */
function variedTimes(time: unknown, factor: number): unknown {
  if (isRawMap(time))
    return Object.fromEntries(Object.entries(time).map(([key, inner]) => [key, variedTimes(inner, factor)]));
  return typeof time === 'string' ? (varied(time, factor) ?? time) : time;
}

/** The time of every part; shares stay. */
function variedMixture(parts: readonly unknown[], factor: number): unknown {
  const all = parts.map((part) => ({ ...mapOf(part), time: varied(mapOf(part)['time'], factor) }));
  return all.some(({ time }) => time === undefined) ? undefined : { mixture: all };
}

const wholeStep = (value: number, factor: number): number =>
  Math.sign(factor - 1) * Math.max(1, Math.round(Math.abs(value * (factor - 1))));
/** Without the last digits of a float, so that 0.8 * 3 is 2.4. */
const tidy = (value: number): number => Number(value.toPrecision(12));
