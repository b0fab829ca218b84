import { isSteady, START_UP_PARTS } from '../../flow/accounts/start-up.js';
import type { Observation } from '../../measure/observe.js';
import { number } from '../format.js';
import { Deferred } from '../sample/deferred.js';
import type { Planned } from '../sample/planned.js';
import type { Sample } from '../sample/sample.js';
import { boundsOf } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { mser5 } from '../statistics/mser5.js';
import { mean, sumOf } from '../statistics/sums.js';
import type { Finding } from './findings.js';

/** Mean work in process of a steady-state run from its empty start, and where the start-up ends by MSER-5. */
export interface WarmUpResult {
  /** Replications pooled, hours of one part, and mean units inside by part of warm-up + length. */
  readonly replications: number;
  readonly partHours: number;
  readonly wip: readonly number[];
  readonly givenHours: number;
  /** The scenario left it to be found by the same rule. */
  readonly isFound: boolean;
  /** Start-up by MSER-5; null: the run is too short for it to be trusted. */
  readonly cutHours: number | null;
  /**
   * Too short: the units inside between the warm-up given and the cut differ from those after it, by more
   * than chance; not known: they do not, but there is no cut to be trusted.
   */
  readonly verdict: 'long enough' | 'too short' | 'not known';
}

/**
 * Confidence with which the stretch between the warm-up given and the cut must differ: the cut was chosen
 * from the same data.
 */
const LEVEL = 0.99;

/**
 * Where the start-up of a steady-state run ends, by MSER-5 over the mean of the replications watched closely;
 * null for a programme, which really starts empty, and where a run stopped early (gridlock).
 */
export function warmUp(sample: Sample): Deferred<WarmUpResult | null> {
  // All that can speak: those watched closely, and those that stopped.
  const telling = sample.fold<ToWarmUp[]>([], (known, { startUp, outcome }) => {
    if (startUp !== null || outcome !== 'ended') known.push({ startUp, outcome });
    return known;
  });
  return new Deferred(() => warmUpOf(sample, telling.value));
}

type ToWarmUp = Pick<Observation, 'startUp' | 'outcome'>;

/** The same of replications at hand. */
export function warmUpOf(
  { scenario, model }: Pick<Planned, 'scenario' | 'model'>,
  observations: readonly ToWarmUp[],
): WarmUpResult | null {
  const inside = observations.flatMap(({ startUp }) => (startUp === null ? [] : [startUp]));
  if (!isSteady(model) || inside.length === 0 || observations.some(({ outcome }) => outcome !== 'ended'))
    return null;
  const {
      programme: { end, warmUp: givenMin },
      horizon,
    } = model,
    partMin = Math.min(end, horizon) / START_UP_PARTS;
  const wip = Array.from(
    { length: START_UP_PARTS },
    (_, part) => sumOf(inside, (each) => each[part]) / inside.length,
  );
  const { cut, isTooShort } = mser5(wip),
    given = Math.ceil(givenMin / partMin - 1e-9);
  const { low, high } = boundsOf(
    cut <= given
      ? null
      : meanInterval(
          inside.map((each) => mean(each.subarray(given, cut)) - mean(each.subarray(cut, START_UP_PARTS))),
          LEVEL,
        ),
  );
  return {
    replications: inside.length,
    partHours: partMin / 60,
    wip,
    givenHours: givenMin / 60,
    isFound: scenario.programme.findsWarmUp === true,
    cutHours: isTooShort ? null : (cut * partMin) / 60,
    verdict: low > 0 || high < 0 ? 'too short' : isTooShort ? 'not known' : 'long enough',
  };
}

export function warmUpFindings(seen: WarmUpResult | null): Finding[] {
  if (seen?.verdict !== 'too short') return [];
  const { replications, givenHours, cutHours } = seen;
  const remedy =
    cutHours === null
      ? 'the run is too short to say for how long; raise the length and the warm up'
      : `MSER-5 ends the start-up after ${number(cutHours)} h; raise the warm up to that at least, ` +
        'or leave it to `mser-5`';
  return [
    {
      kind: 'warm-up',
      replications,
      text: `the line still fills after the warm-up of ${number(givenHours)} h: ${remedy}`,
    },
  ];
}
