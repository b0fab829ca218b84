import type { Model } from '../../flow/model/model.js';
import { compile } from '../../scenario/compile.js';
import { type ScenarioData, scenarioWith } from '../../scenario/data.js';
import { edited } from '../../scenario/file/edit-path.js';
import { sayPath } from '../../scenario/file/problem.js';
import { drawnValue } from './draw.js';
import type { UncertainInput } from './inputs.js';

/** Each draw of the inputs is used in so many replications, one after another. */
export const PER_DRAW = 2;
/** The draw that a replication uses, both from 1. */
export const drawOf = (replication: number): number => Math.ceil(replication / PER_DRAW);

/** Draws that a scenario cannot have (chances of more than 100 % together) are drawn again so often. */
const MOST_ATTEMPTS = 50;
/** Replications of several draws are under way at once. */
const MOST_KEPT = 64;

/**
 * The model of each draw of the inputs, by number. The scenario is read anew with the values drawn, so it is
 * checked and compiled as if they stood in its file.
 * @throws RangeError where no draw is one that the scenario can have
 */
export function drawnModels(
  inputs: readonly UncertainInput[],
  data: ScenarioData,
  seed: string,
): (draw: number) => Model {
  const kept = new Map<number, Model>();
  return (draw) => {
    let model = kept.get(draw);
    if (model === undefined) {
      model = drawnModel(inputs, data, seed, draw);
      const [oldest] = kept.keys();
      if (oldest !== undefined && kept.size === MOST_KEPT) kept.delete(oldest);
      kept.set(draw, model);
    }
    return model;
  };
}

function drawnModel(
  inputs: readonly UncertainInput[],
  data: ScenarioData,
  seed: string,
  draw: number,
): Model {
  let why = '';
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
    let { value } = data;
    for (const input of inputs) value = edited(value, input.at, drawnValue(input, seed, draw, attempt));
    const { scenario, findings } = scenarioWith(data, value);
    if (scenario !== undefined) return compile(scenario);
    const [first] = findings;
    why = first === undefined ? '' : `: ${sayPath(first.path)}: ${first.wanted}`;
  }
  throw new RangeError(
    `inputs: expected measured values whose draws make a scenario, got none in ${MOST_ATTEMPTS}${why}`,
  );
}
