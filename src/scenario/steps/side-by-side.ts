import { z } from 'zod';
import { type Model, UNLIMITED } from '../../flow/model/model.js';
import type { Compilation } from '../lookup/compilation.js';
import { allSteps, stationsOf } from '../lookup/placed.js';
import { equipmentKey } from '../plant/equipment.js';
import { teamsAt, teamsOf } from '../plant/teams.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { StationStep } from '../types/steps.js';
import { keys, name, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import type { TimeSchema } from '../values/time.js';
import { settingKey } from '../whole/settings.js';
import { createsKey } from './inspections.js';
import { crewKey, partKeys } from './needs.js';
import { type StepSchema, stepName } from './steps.js';
import { checkTask, oneShiftKey, workKeys } from './tasks.js';
import { whenKey } from './visits.js';

/**
 * Steps done side by side on one unit in one place: a step of the route without work of its own, and those in
 * it.
 */
export function besideSchema(step: StepSchema, time: TimeSchema) {
  // Whatever else a step may have stays at its default.
  const plain = step.parse({ step: 'step', at: 'station' });
  const inner = keys(
    {
      step: stepName,
      when: whenKey,
      crew: crewKey,
      equipment: equipmentKey(time),
      ...workKeys(time),
      'in one shift': oneShiftKey,
      parts: partKeys.parts,
      creates: createsKey,
    },
    'a step: a map with the key step',
  )
    .superRefine(
      together((one, wrong) => {
        checkTask({ ...one, attendedEnd: false }, wrong);
      }),
    )
    .transform(
      ({ step: name, inOneShift, ...rest }): StationStep => ({
        ...plain,
        ...rest,
        name,
        oneShift: inOneShift,
      }),
    );
  return keys(
    {
      at: name('the name of a station').describe(
        'The station; all steps are done in one of its places. Example: dress-up station',
      ),
      'side by side': z
        .array(inner, { error: 'a list of steps' })
        .min(2, { error: 'at least two steps' })
        .describe(
          'The steps, with the keys of a step that are listed here; the unit goes on when all are ' +
            "done. All begin at once; a step that would exceed the station's limit of people waits until " +
            'others end, in the order listed. Inspect in a separate step after them. Example: [{ step: ' +
            'fit dashboard, work: 90 min }, { step: route cables, work: 1 h }]',
        ),
      when: whenKey,
      setting: settingKey,
    },
    'steps side by side: a map with the keys at and side by side',
  ).transform(
    ({ at, sideBySide, when, setting }): StationStep => ({
      ...plain,
      name: sideBySide.map((each) => each.name).join(' / '),
      at,
      when,
      setting,
      sideBySide: sideBySide.map((each) => ({ ...each, at })),
    }),
  );
}

/** Steps side by side that cannot be, and steps that want more people than may work in one place. */
export function* besideFindings(scenario: Scenario): Iterable<Finding> {
  const teams = teamsOf(scenario);
  for (const { path, step, where } of allSteps(scenario)) {
    if (where === undefined) continue;
    const { lot, failures, people } = where.station,
      at = [...path, 'at'],
      { sideBySide } = step;
    if (sideBySide !== undefined && lot !== undefined)
      yield {
        path: at,
        wanted: 'a station that takes units one by one',
        seen: `"${step.at}", which works on lots`,
      };
    if (sideBySide !== undefined && failures.some(({ by }) => by === 'operating time'))
      yield {
        path: at,
        wanted:
          'a station that fails by calendar time or not at all; operating time is not counted for ' +
          'steps side by side',
        seen: `"${step.at}"`,
      };
    for (const [i, { parts }] of (sideBySide ?? []).entries())
      for (const [feeder, count] of Object.entries(parts))
        if (count === 'own' || own(scenario.feeders, feeder)?.kind === 'own')
          yield {
            path: [...path, 'side by side', i, 'parts', feeder],
            wanted: 'own parts only at a step of its own',
            atKey: true,
          };
    const asked = Object.values(step.crew).reduce((a, b) => a + b, 0),
      ofTeams = teamsAt(teams, step.name).reduce((sum, { kind }) => sum + kind.people, 0);
    if (asked + ofTeams > (people ?? Infinity))
      yield {
        path: asked > 0 ? [...path, 'crew'] : path,
        wanted: `no more people than the ${people} who can work in a place of "${step.at}"`,
        seen: ofTeams > 0 ? `${asked} and ${ofTeams} of teams` : String(asked),
      };
  }
}

export function compileBeside(
  { scenario, laid }: Compilation,
  { names }: Model['stations'],
): Model['sideBySide'] {
  const stations = stationsOf(scenario);
  const most = new Map<string, number>();
  for (const each of laid.steps)
    if (each.kind === 'step' && each.step.sideBySide !== undefined)
      most.set(each.step.at, Math.max(most.get(each.step.at) ?? 0, each.step.sideBySide.length));
  return {
    group: Int32Array.from(laid.steps, (step) => (step.kind === 'step' ? (step.group ?? -1) : -1)),
    most: Int32Array.from(names, (name) => most.get(name) ?? 0),
    people: Int32Array.from(names, (name) => stations.get(name)?.station.people ?? UNLIMITED),
  };
}
