import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type WarmUpResult, warmUpFindings, warmUpVerdict } from '../answer/warm-up.js';
import type { Replicator } from '../run/replicator.js';
import { boundsOf } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { firstPilot, insideOf, pilotCut, pilotModel, TIMES_CUT } from './pilot.js';
import type { Results } from './results.js';

/**
 * Replications that are pooled for the cut, and those for the bias at first, which are doubled until told.
 */
const POOLED = 20,
  AT_FIRST = 20;
/** The cut may cost as much as the study itself, the bias so many times as much. */
const MOST_COST = 3;
/** A bias up to this share of the half-width of the study's own interval does not matter. */
const MATTERS = 0.1;
/** Looked at several times, with a cut from the same runs. */
const LEVEL = 0.99;

/**
 * Whether the warm-up of a steady-state run is long enough, with evidence: units inside in the time just
 * after it against the later part of longer runs from the same empty start, in each replication of a pilot.
 * What is found there is the bias of the mean over the whole length, as nothing of the start is left behind
 * it.
 */
export async function judgedWarmUp(
  {
    warmUp: seen,
    wip,
    leadTime,
    replications,
  }: Pick<Results, 'warmUp' | 'wip' | 'leadTime' | 'replications'>,
  scenario: Scenario,
  replicator: Replicator,
): Promise<Pick<Results, 'warmUp' | 'findings'>> {
  const { mean } = wip.total,
    { low, high } = boundsOf(wip.total),
    { lengthMin: length, warmUpMin: given } = scenario.programme;
  if (seen === null || !Number.isFinite(high - low) || length === undefined)
    return { warmUp: seen, findings: [] };
  const run = given + length,
    study = replications * run,
    found = await pilotCut(
      scenario,
      {
        replications: POOLED,
        minutes: firstPilot(leadTime.mean.n > 0 ? leadTime.mean.mean * MINUTES_PER_DAY : NaN, run),
        most: study / POOLED,
      },
      replicator,
    );
  if (found === null) return { warmUp: seen, findings: [] };
  const cut = found === 'too long' ? null : found.cut,
    // Values carry ten digits.
    matters = Math.max((MATTERS * (high - low)) / 2, 1e-9 * mean),
    over = found === 'too long' ? run : TIMES_CUT * found.cut,
    least = found === 'too long' ? length : found.pilot / 2,
    window = Math.min(length, Math.max(over, least)),
    calm = Math.max(given + window, over),
    minutes = Math.ceil(calm + 2 * window),
    model = pilotModel(scenario, minutes),
    left: number[] = [];
  if (model.programme.end < minutes) return { warmUp: seen, findings: [] };
  const units = (each: readonly number[], from: number, until: number): number =>
    meanOver(each, minutes, from, until);
  for (
    let to = AT_FIRST;
    left.length < to;
    to = Math.min(2 * to, Math.floor((MOST_COST * study) / minutes))
  ) {
    const inside = await insideOf(model, [left.length + 1, to], replicator);
    if (inside === null) return { warmUp: seen, findings: [] };
    for (const each of inside)
      left.push((window / length) * (units(each, given, given + window) - units(each, calm, minutes)));
    if (told(left, matters) !== 'not known') break;
  }
  const verdict = told(left, matters);
  const warmUp: WarmUpResult = {
    ...seen,
    cutHours: cut === null ? null : cut / 60,
    advisedHours: cut === null ? null : over / 60,
    bias: { left: meanInterval(left, LEVEL), matters },
    // Without a cut nobody knows whether the later time is free of the start.
    verdict: cut === null && verdict === 'long enough' ? 'not known' : verdict,
  };
  return { warmUp, findings: warmUpFindings(warmUp) };
}

const told = (left: readonly number[], matters: number): WarmUpResult['verdict'] =>
  warmUpVerdict(meanInterval(left, LEVEL), matters);

/**
 * Mean of a series of equal parts of so many minutes from one time to another; a part counts by its share.
 */
function meanOver(parts: readonly number[], minutes: number, from: number, until: number): number {
  const each = minutes / parts.length;
  let area = 0;
  for (const [part, value] of parts.entries())
    area += value * Math.max(0, Math.min(until, (part + 1) * each) - Math.max(from, part * each));
  return area / (until - from);
}
