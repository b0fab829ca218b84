import { simulate } from '../../src/flow/engine.js';
import { STATE_COUNT } from '../../src/flow/floor/states.js';
import type { Model } from '../../src/flow/model/model.js';
import { prepare } from '../../src/flow/plan.js';
import type { Run } from '../../src/flow/run.js';
import type { Observation } from '../../src/measure/observe.js';
import { observe } from '../../src/measure/observe.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';

/** The model of a scenario text that must be free of problems. */
export function modelOf(yaml: string): Model {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', () => '');
  if (scenario === undefined)
    throw new Error(
      `expected a scenario without problems, got\n${problems.map((problem) => JSON.stringify(problem)).join('\n')}\n${yaml}`,
    );
  return compile(scenario);
}

export interface Played {
  readonly model: Model;
  readonly run: Run;
  readonly seen: Observation;
}

/** One replication of a scenario text. */
export function play(yaml: string, seed = 'flow', replication = 1): Played {
  return playModel(modelOf(yaml), seed, replication);
}

export function playModel(model: Model, seed: string, replication: number): Played {
  const run = simulate(prepare(model), seed, replication);
  return { model, run, seen: observe(run, replication) };
}

/** The ring of a standstill: `unit 2 in place s: room a of 3`, who, where, what it lacks, and who has that. */
export const ringIn = ({ seen: { standstill } }: Played): string[] =>
  standstill.ring.map(
    ({ route, number, in: where, where: name, lacks }) =>
      `${route} ${number} in ${where} ${name}: ` +
      lacks
        .map(
          ({ kind, name: what, by }) =>
            `${kind} ${what} of ${by.map((holder) => standstill.ring[holder].number).join(' ') || 'nobody'}`,
        )
        .join(', '),
  );

/** Index of a name; an error if there is none, so that a misspelt name cannot pass. */
export function at(names: readonly string[], name: string): number {
  const index = names.indexOf(name);
  if (index < 0) throw new Error(`expected one of ${names.join(', ')}, got ${name}`);
  return index;
}

/** Minutes that all places of a station spent in a state of `states.ts`, to a millionth. */
export function minutesIn({ model, seen }: Played, station: string, state: number): number {
  const s = at(model.stations.names, station);
  return rounded(seen.stationShares[s * STATE_COUNT + state] * seen.minutes * model.stations.places[s]);
}

/** When each unit was shipped, by build number, minutes to a millionth. */
export const shippedAt = ({ seen }: Played): number[] => Array.from(seen.shippedAt, rounded);
export const enteredAt = ({ seen }: Played): number[] => Array.from(seen.enteredAt, rounded);

/** Visits of a step. */
export const visits = ({ model, seen }: Played, step: string): number =>
  seen.stepVisits[at(model.steps.names, step)];

const rounded = (minutes: number): number => Math.round(minutes * 1e6) / 1e6;
