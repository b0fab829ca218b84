import { isSteady, START_UP_PARTS } from '../../flow/accounts/start-up.js';
import type { Observation } from '../../measure/observe.js';
import { bounds, intervalName, number, signed } from '../format.js';
import { Deferred } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import { sumOf } from '../statistics/sums.js';
import type { Finding } from './findings.js';

/**
 * Mean work in process of a steady-state run from its empty start, and whether the warm-up is long enough.
 */
export interface WarmUpResult {
  /** Replications pooled, hours of one part, and mean units inside by part of warm-up + length. */
  readonly replications: number;
  readonly partHours: number;
  readonly wip: readonly number[];
  readonly givenHours: number;
  /** The scenario left it to be found. */
  readonly isFound: boolean;
  /** Where MSER-5 cuts the pilot; null: nowhere that can be trusted. */
  readonly cutHours: number | null;
  /** A warm-up to begin with, by that cut; null where there is none. */
  readonly advisedHours: number | null;
  /**
   * What the start leaves in the mean units inside, over the replications of the pilot, and up to what it
   * does not matter; null where nothing was tried.
   */
  readonly bias: { readonly left: Estimate; readonly matters: number } | null;
  /** By the whole interval of the bias: below what does not matter, beyond it, or neither. */
  readonly verdict: 'long enough' | 'too short' | 'not known';
}

type ToWarmUp = Pick<Observation, 'startUp' | 'outcome'>;

/**
 * How a steady-state run fills, by the replications watched closely; whether the warm-up is long enough is
 * still to be judged. null for a programme, which really starts empty, and where a run stopped early
 * (gridlock).
 */
export function warmUp(sample: Sample): Deferred<WarmUpResult | null> {
  // All that can speak: those watched closely, and those that stopped.
  const telling = sample.fold<ToWarmUp[]>([], (known, { startUp, outcome }) => {
    if (startUp !== null || outcome !== 'ended') known.push({ startUp, outcome });
    return known;
  });
  return new Deferred(() => {
    const { scenario, model } = sample,
      { end, warmUp: givenMin } = model.programme,
      inside = telling.value.flatMap(({ startUp }) => (startUp === null ? [] : [startUp]));
    if (!isSteady(model) || inside.length === 0 || telling.value.some(({ outcome }) => outcome !== 'ended'))
      return null;
    return {
      replications: inside.length,
      partHours: Math.min(end, model.horizon) / START_UP_PARTS / 60,
      wip: Array.from(
        { length: START_UP_PARTS },
        (_, part) => sumOf(inside, (each) => each[part]) / inside.length,
      ),
      givenHours: givenMin / 60,
      isFound: scenario.programme.findsWarmUp === true,
      cutHours: null,
      advisedHours: null,
      bias: null,
      verdict: 'not known',
    };
  });
}

/** By the whole interval of what the start leaves, against what does not matter. */
export function warmUpVerdict(left: Estimate, matters: number): WarmUpResult['verdict'] {
  const { low, high } = boundsOf(left);
  if (low >= -matters && high <= matters) return 'long enough';
  return low > matters || high < -matters ? 'too short' : 'not known';
}

export function warmUpFindings(seen: WarmUpResult | null): Finding[] {
  if (seen?.verdict !== 'too short' || seen.bias === null) return [];
  const {
    replications,
    givenHours,
    advisedHours,
    bias: { left, matters },
  } = seen;
  const remedy =
    advisedHours === null
      ? 'how long it would have to be cannot be told; does the line ever stop filling?'
      : `give at least ${number(advisedHours)} h`;
  return [
    {
      kind: 'warm-up',
      replications,
      text:
        `the line still fills after the warm-up of ${number(givenHours)} h: the mean of the units inside ` +
        `is off by ${signed(left)} (${intervalName(left.level)} ${bounds(left)}), which matters beyond ` +
        `${number(matters)}; ${remedy}`,
    },
  ];
}
