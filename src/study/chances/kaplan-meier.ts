import type { Span } from './spans.js';

/** The share that lasts longer, after one time at which some ended. */
export interface Survival {
  readonly minutes: number;
  /** Spans that lasted at least so long. */
  readonly atRisk: number;
  readonly ended: number;
  /** Share that lasts longer than `minutes`. */
  readonly longer: number;
  /** Standard error of `longer` (Greenwood 1926); NaN once nobody is left. */
  readonly standardError: number;
}

/**
 * The share of spans that last longer than any time, those cut off counted for as long as they were seen
 * (Kaplan & Meier 1958, J. Am. Stat. Assoc. 53, 457-481). A span cut off at the time at which another ends
 * was still at risk.
 * @returns by time; nothing where none ended
 */
export function kaplanMeier(spans: readonly Span[]): Survival[] {
  const sorted = [...spans].sort((a, b) => a.minutes - b.minutes),
    steps: Survival[] = [];
  let [longer, greenwood] = [1, 0];
  for (let i = 0; i < sorted.length; ) {
    const minutes = sorted[i]?.minutes ?? NaN,
      atRisk = sorted.length - i;
    let ended = 0;
    for (; sorted[i]?.minutes === minutes; i++) if (sorted[i]?.ended === true) ended++;
    if (ended === 0) continue;
    longer *= (atRisk - ended) / atRisk;
    greenwood += ended / (atRisk * (atRisk - ended));
    steps.push({ minutes, atRisk, ended, longer, standardError: longer * Math.sqrt(greenwood) });
  }
  return steps;
}

/** Rounding of products of shares. */
const EVEN = 1e-9;

/**
 * The time that a share p lasts no longer than: the first at which no more than 1 - p last longer, or halfway
 * to the next where exactly 1 - p do. Null where so many did not end.
 */
export function lifetimeQuantile(steps: readonly Survival[], p: number): number | null {
  const at = steps.findIndex(({ longer }) => longer <= 1 - p + EVEN),
    step = steps[at];
  if (step === undefined) return null;
  const next = steps[at + 1];
  return next !== undefined && step.longer >= 1 - p - EVEN ? (step.minutes + next.minutes) / 2 : step.minutes;
}
