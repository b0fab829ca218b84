import type { Distribution } from '../../random/distribution.js';
import type { ScenarioData } from '../../scenario/data.js';
import { isLearningRate } from '../../scenario/file/basis.js';
import type { Assumption, Basis, Measured, Scenario } from '../../scenario/types/scenario.js';
import { isTime } from '../../scenario/values/forms.js';
import { chanceOf } from '../../scenario/values/quantity.js';
import { isRawMap } from '../../scenario/values/raw.js';
import { observedReader, timeSchema } from '../../scenario/values/time.js';

/** What is drawn anew of an input that was measured. */
export type Uncertain =
  /** A time with its distribution, minutes. */
  | { readonly kind: 'time'; readonly distribution: Distribution }
  | { readonly kind: 'chance'; readonly found: number }
  /** A chance, 0..1, that is no share of a count. */
  | { readonly kind: 'estimated chance'; readonly chance: number; readonly standardError: number }
  /** A learning rate, 0..1. */
  | { readonly kind: 'learning rate'; readonly rate: number; readonly standardError: number };

/** A value of the scenario that is known from so many values. */
export interface UncertainInput extends Pick<Assumption, 'path' | 'at' | 'words'> {
  readonly n: number;
  readonly of: Uncertain;
}

/** Why a value that the scenario speaks of is not drawn. */
export type WhyLeft =
  | Exclude<Basis, 'measured'>
  | 'number of values not said'
  | 'no spread'
  | 'share of a whole';

export interface LeftInput extends Pick<Assumption, 'path' | 'words'> {
  readonly why: WhyLeft;
}

export interface Inputs {
  /** In the order of the file. */
  readonly drawn: readonly UncertainInput[];
  readonly left: readonly LeftInput[];
}

/** Fewer values have no spread to fit a distribution to. */
const LEAST = 2;

/** The values of a scenario of which its basis says how many were measured, and those that are left alone. */
export function inputsOf({ assumptions }: Scenario, { files }: Pick<ScenarioData, 'files'>): Inputs {
  const schema = timeSchema(observedReader((name) => files[name] ?? ''));
  const timeOf = (raw: unknown): Distribution | undefined => {
    const read = isRawMap(raw) && isTime(raw) ? schema.safeParse(raw) : undefined;
    return read?.success === true && read.data.kind !== 'constant' ? read.data : undefined;
  };
  const drawn: UncertainInput[] = [],
    left: LeftInput[] = [];
  for (const { path, at, words, basis, measured, raw } of assumptions) {
    const of = basis !== 'measured' ? basis : uncertain(measured, raw, at, timeOf);
    if (typeof of === 'string') left.push({ path, words, why: of });
    else drawn.push({ path, at, words, n: measured?.n ?? 0, of });
  }
  return { drawn, left };
}

function uncertain(
  measured: Measured | undefined,
  raw: unknown,
  at: Assumption['at'],
  timeOf: (raw: unknown) => Distribution | undefined,
): Uncertain | WhyLeft {
  if (measured === undefined) return 'number of values not said';
  const { n, found, standardError } = measured,
    share = typeof raw === 'number' ? raw : typeof raw === 'string' ? chanceOf(raw) : undefined;
  if (found !== undefined) return isShareOfOptions(at) ? 'share of a whole' : { kind: 'chance', found };
  if (standardError !== undefined && share !== undefined)
    return isLearningRate(at)
      ? { kind: 'learning rate', rate: share, standardError }
      : { kind: 'estimated chance', chance: share, standardError };
  const distribution = n < LEAST ? undefined : timeOf(raw);
  return distribution === undefined ? 'no spread' : { kind: 'time', distribution };
}

/** Of the values of an option, whose shares must add up to one: each drawn by itself, they would not. */
const isShareOfOptions = (at: Assumption['at']): boolean =>
  at[0] === 'programme' && at[1] === 'options' && at.length > 3;
