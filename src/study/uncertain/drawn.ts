import type { Model } from '../../flow/model/model.js';
import type { ScenarioData } from '../../scenario/data.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type Inputs, inputsOf } from './inputs.js';
import { drawnModels, drawOf } from './models.js';

/** What is asked of inputs that are not known for certain. */
export interface UncertainAsked {
  readonly scenario: Scenario;
  readonly data?: ScenarioData | undefined;
  readonly seed: string;
  readonly replications: number;
  readonly inputs?: 'uncertain' | undefined;
}

export interface Drawn {
  /** Null where the inputs are to be as written. */
  readonly inputs: Inputs | null;
  /** The model of a replication; undefined where it is the same in all, since there is nothing to draw. */
  readonly model: ((replication: number) => Model) | undefined;
  /** What replications hang on besides the scenario, which does not say how often a value was measured. */
  readonly identity: Readonly<Record<string, unknown>>;
}

/**
 * The inputs of a study, drawn anew for every two replications where that is asked.
 * @throws RangeError without data, or of an odd number of replications
 */
export function drawnOf({ scenario, data, seed, replications, inputs: asked }: UncertainAsked): Drawn {
  if (asked === undefined) return { inputs: null, model: undefined, identity: {} };
  if (data === undefined) throw new RangeError('inputs: expected the scenario as data, got none');
  if (replications % 2 === 1)
    throw new RangeError(
      `replications: expected an even number, as each draw of the inputs is used in two, got ${replications}`,
    );
  const inputs = inputsOf(scenario, data),
    { drawn } = inputs;
  if (drawn.length === 0) return { inputs, model: undefined, identity: {} };
  const models = drawnModels(drawn, data, seed);
  return {
    inputs,
    model: (replication) => models(drawOf(replication)),
    identity: {
      inputs: drawn.map(({ path, n, of }) => [path, n, of.kind === 'chance' ? of.found : of]),
    },
  };
}
