import type { Model } from '../../src/flow/model.js';
import type { Observation } from '../../src/measure/observation.js';
import type { Scenario } from '../../src/scenario/scenario.js';
import type { Results } from '../../src/study/results.js';
import { planned, Sample } from '../../src/study/sample.js';
import { summary, type Origin } from '../../src/study/summary.js';

interface ToSummarise extends Origin {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly observations: readonly Observation[];
  readonly level: number;
}

/** Replications at hand, as results. */
export function summarise({ scenario, model, observations, level, ...origin }: ToSummarise): Results {
  const sample = new Sample(planned(scenario, model), level),
    results = summary(sample, origin);
  for (const each of observations) sample.take(each);
  return results.value;
}
