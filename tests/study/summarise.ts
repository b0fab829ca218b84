import type { Model } from '../../src/flow/model/model.js';
import type { Observation } from '../../src/measure/observe.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import type { Origin } from '../../src/study/head.js';
import { planned } from '../../src/study/sample/planned.js';
import { Sample } from '../../src/study/sample/sample.js';
import type { Results } from '../../src/study/simulate/results.js';
import { summary } from '../../src/study/simulate/summary.js';

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
  return results.value.results;
}
