import type { StationStep } from '../types/steps.js';
import type { Station } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import { z } from 'zod';
import { UNLIMITED } from '../../flow/model/model.js';
import type { Model } from '../../flow/model/model.js';

import { teamPeopleAt } from '../plant/stretches.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
import { own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';
import type { PlacedStep } from '../whole/placed.js';
import type { LaidRoutes } from './route.js';
import type { stepSchema } from './steps.js';

/**
 * Steps done side by side on one unit in one place: a step of the route without work of its own, and those in
 * it.
 */
export function besideSchema(step: ReturnType<typeof stepSchema>) {
  const {
    when,
    crew,
    work,
    passes,
    'work factor': factor,
    learning,
    process,
    'in one shift': oneShift,
    parts,
    creates,
    step: stepName,
  } = step.in.shape;
  // Whatever else a step may have stays at its default.
  const plain = step.parse({ step: 'step', at: 'station' });
  const inner = keys(
    {
      step: stepName,
      when,
      crew,
      work,
      passes,
      'work factor': factor,
      learning,
      process,
      'in one shift': oneShift,
      parts,
      creates,
    },
    'a step: a map with the key step',
  )
    .superRefine((s, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      if (s.work !== undefined && s.passes !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['passes'],
          message: 'either work or passes; the work of a pass stands inside passes',
          params: { seen: 'both' },
        });
    })
    .transform(
      (s): StationStep => ({
        ...plain,
        name: s.step,
        when: s.when ?? {},
        crew: s.crew,
        work: s.work,
        passes: s.passes && { count: s.passes.count, work: s.passes.work, settle: s.passes.settle },
        workFactor: s['work factor'],
        learning: s.learning,
        process: s.process,
        oneShift: s['in one shift'],
        parts: s.parts,
        creates: s.creates,
      }),
    );
  return keys(
    {
      at: name('the name of a station').describe(
        'The station in one place of which all the steps are done. Example: dress-up station',
      ),
      'side by side': z
        .array(inner, { error: 'a list of steps' })
        .min(2, { error: 'at least two steps' })
        .describe(
          'The steps, with the keys of a step that are listed here; the unit goes on when all are ' +
            'done. All begin at once; one that would bring in more people than the station lets into a ' +
            'place waits until others are over, the first listed first. Inspect in a step of its own ' +
            'behind them. Example: [{ step: fit dashboard, work: 90 min }, { step: route cables, work: 1 h }]',
        ),
      when,
    },
    'steps side by side: a map with the keys at and side by side',
  ).transform(
    (g): StationStep => ({
      ...plain,
      name: g['side by side'].map((each) => each.name).join(' / '),
      at: g.at,
      when: g.when ?? {},
      sideBySide: g['side by side'].map((each) => ({ ...each, at: g.at })),
    }),
  );
}

/** Steps side by side that cannot be, and steps that want more people than may work in one place. */
export function besideFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).flatMap((placed) => {
      const { at } = placed.step,
        site = siteOf.get(at),
        station = site === undefined ? undefined : own(scenario.sites[site]!.stations, at);
      if (station === undefined) return [];
      return [
        ...(placed.step.sideBySide === undefined ? [] : wrongGroup(scenario, placed, station)),
        ...crowded(scenario, placed, station.people),
      ];
    }),
  );
}

function wrongGroup(
  scenario: Scenario,
  { path, step }: PlacedStep,
  { lot: lots, failures }: Station,
): Finding[] {
  const lot =
    lots !== undefined
      ? [
          {
            path: [...path, 'at'],
            wanted: 'a station that takes units one by one',
            seen: `"${step.at}", which works on lots`,
          },
        ]
      : [];
  const wears = failures.some(({ by }) => by === 'operating time')
    ? [
        {
          path: [...path, 'at'],
          wanted:
            'a station that fails by calendar time or not at all; operating time is not counted for ' +
            'steps side by side',
          seen: `"${step.at}"`,
        },
      ]
    : [];
  const ownParts = step.sideBySide!.flatMap((each, i) =>
    Object.entries(each.parts).flatMap(([feeder, count]): Finding[] =>
      count === 'own' || own(scenario.feeders, feeder)?.kind === 'own'
        ? [
            {
              path: [...path, 'side by side', i, 'parts', feeder],
              wanted: 'own parts only at a step of its own',
              atKey: true,
            },
          ]
        : [],
    ),
  );
  return [...lot, ...wears, ...ownParts];
}

function crowded(scenario: Scenario, { path, step }: PlacedStep, people: number | undefined): Finding[] {
  if (people === undefined) return [];
  const asked = Object.values(step.crew).reduce((a, b) => a + b, 0),
    teams = teamPeopleAt(scenario, step.name);
  if (asked + teams <= people) return [];
  return [
    {
      path: asked > 0 ? [...path, 'crew'] : path,
      wanted: `no more people than the ${people} who can work in a place of "${step.at}"`,
      seen: teams > 0 ? `${asked} and ${teams} of teams` : String(asked),
    },
  ];
}

export function compileBeside(
  scenario: Scenario,
  laid: LaidRoutes,
  stations: Model['stations'],
): Model['beside'] {
  const people = new Map(
    Object.values(scenario.sites).flatMap((site) =>
      Object.entries(site.stations).map(([name, station]) => [name, station.people]),
    ),
  );
  const group = Int32Array.from(laid.steps, (step) => (step.kind === 'step' ? (step.group ?? -1) : -1));
  return {
    group,
    most: Int32Array.from(stations.names, (name) =>
      Math.max(
        0,
        ...laid.steps.map((step) =>
          step.kind === 'step' && step.step.at === name ? (step.step.sideBySide?.length ?? 0) : 0,
        ),
      ),
    ),
    people: Int32Array.from(stations.names, (name) => people.get(name) ?? UNLIMITED),
  };
}
