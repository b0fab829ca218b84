import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import type { Scenario } from '../scenario/scenario.js';
import type { RateUnit } from './results-buffers.js';
import { planned, ratio } from './sample.js';
import { judgeRate } from './summary-rate.js';
import { shippedPerDay } from './summary-throughput.js';

/** Throughput of one replication, and what it is. */
export interface RateMeasure {
  readonly unit: RateUnit;
  /** Over which time, in words. */
  readonly over: string;
  readonly of: (observation: Observation) => number;
}

/**
 * Throughput of every layout, over the same time: units a working day in the time in which the base is judged; over the whole
 * run where there is none; units an hour of a steady-state run. A replication that ends in gridlock counts as nothing shipped.
 * @param observations of the scenario as it is
 */
export function rateMeasure(
  scenario: Scenario,
  model: Model,
  observations: readonly Observation[],
  level: number,
): RateMeasure {
  const plan = planned(scenario, model),
    { calendar } = plan;
  if (calendar.kind === 'steady state')
    return measure('units an hour', 'the time observed, warm-up left out', ({ shipped, minutes }) =>
      ratio(60 * shipped, minutes),
    );
  const { window, heldIn } = judgeRate(plan, observations, level);
  if (window !== null) return measure('units a working day', `${window.from} to ${window.to}`, heldIn);
  return measure('units a working day', 'the whole run', shippedPerDay(calendar));
}

function measure(unit: RateUnit, over: string, of: (observation: Observation) => number): RateMeasure {
  return { unit, over, of: (seen) => (seen.outcome === 'gridlock' ? 0 : of(seen) || 0) };
}
