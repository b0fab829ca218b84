import { z } from 'zod';
import { WHOLE } from '../../flow/model/steps.js';
import { ragged, uint8 } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import type { Lookup } from '../lookup/outline.js';
import { allSteps } from '../lookup/placed.js';
import { stretchesOf } from '../plant/stretches.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { StationStep } from '../types/steps.js';
import { name, named, oneOrMore } from '../values/keys.js';
import { mapOf, own, type RawMap } from '../values/raw.js';
import { whole, word } from '../values/scalars.js';

const partCount = z.union([whole(1), word('own')], { error: 'a whole number from 1, or own' });

/** The people that a step takes. */
export const crewKey = named(whole(1), 'crews with the number of people, such as { painters: 2 }')
  .default({})
  .describe(
    'People needed, from the crews of the site of the station; claimed all together. Default: ' +
      'none. Example: { painters: 2 }',
  );

/** The parts that a step takes, and those that it takes off. */
export const partKeys = {
  parts: named(partCount, 'feeders and supplies with how many, such as { axles: 2, cab doors: own }')
    .default({})
    .describe(
      'Parts that join here: a number from the stock of a feeder or a supply, or `own` for those ' +
        'taken off this same unit. A step of a feeder may take parts too. Example: { axles: 2, power ' +
        'packs: 1, cab doors: own }',
    ),
  'takes off': oneOrMore(
    name('the name of a feeder of own parts'),
    'the name of a feeder of own parts, or a list',
  )
    .optional()
    .transform((names) => names ?? [])
    .describe(
      'Own parts that leave the unit when the step ends and go through their feeder. Example: cab doors',
    ),
};

/** Where a unit waits for what the step takes. */
export const waitKey = word('in place', 'in buffer')
  .optional()
  .transform((where) => (where === 'in buffer' ? where : undefined))
  .describe(
    'Where a unit waits for parts, carriers and teams of this step: `in place`, it takes a place of the ' +
      'station and waits there; `in buffer`, it takes a place only when all of them are there, and waits ' +
      'ahead of the station until then, where others may pass it. Its crew is claimed in the place. ' +
      'For steps of the main route. Default: in place. Example: in buffer',
  );

export function crewNames(path: Path, entry: RawMap, { outline, look }: Lookup): void {
  const site = outline.stations?.get(String(entry['at']));
  if (site === undefined) return;
  const crews = outline.crewsOf?.get(site);
  for (const crew of Object.keys(mapOf(entry['crew'])))
    look([...path, 'crew', crew], crew, crews, `crew of this name in site ${site}`, true);
}

/** Demands that can never be met: more people than the crew has, more parts than the stock may hold. */
export function* amountFindings(scenario: Scenario): Iterable<Finding> {
  for (const { path, route, step, where } of allSteps(scenario)) {
    for (const [name, people] of Object.entries(step.crew)) {
      const crew = where && own(where.site.crews, name);
      if (crew !== undefined && people > crew.headcount)
        yield {
          path: [...path, 'crew', name],
          wanted: `at most ${crew.headcount}, the headcount of ${name} in site ${where?.siteName}`,
          seen: String(people),
        };
    }
    for (const [name, count] of Object.entries(step.parts)) {
      const feeder = own(scenario.feeders, name);
      if (feeder?.kind !== 'stock' || count === 'own') continue;
      if (count > feeder.target)
        yield {
          path: [...path, 'parts', name],
          wanted: `at most ${feeder.target}, the target stock of the feeder`,
          seen: String(count),
        };
      if (name === route.feeder)
        yield {
          path: [...path, 'parts', name],
          wanted: 'parts of another feeder than the one this step belongs to',
          atKey: true,
        };
    }
  }
}

/** Waits in the buffer that cannot be, or that are for nothing. */
export function* waitFindings(scenario: Scenario): Iterable<Finding> {
  const pulsed = new Set(Object.values(scenario.pulseLines).flatMap(({ stations }) => stations)),
    kept = new Set(stretchesOf(scenario).flatMap(({ names }) => [...names]));
  for (const { path, route, step, where } of allSteps(scenario)) {
    if (step.waitForParts === undefined) continue;
    const { lot, changeover } = where?.station ?? {},
      wrong =
        route.kind !== 'unit'
          ? 'a feeder, which has its full kit before it begins'
          : lot !== undefined
            ? 'lots, for which one unit takes the parts'
            : changeover?.batch !== undefined
              ? 'batches, which choose who goes next'
              : pulsed.has(step.at)
                ? 'a pulse line, on which all units move together'
                : undefined;
    if (wrong !== undefined)
      yield {
        path: [...path, 'wait for parts'],
        wanted: 'in place here; in buffer is for steps of the main route that take units one by one',
        seen: `"in buffer" at ${wrong}`,
      };
    else if (Object.keys(step.parts).length === 0 && !kept.has(step.name))
      yield {
        path: [...path, 'wait for parts'],
        wanted: `parts, a carrier or a team that "${step.name}" waits for; leave the key out`,
        seen: '"in buffer"',
      };
  }
}
interface NeedRow {
  readonly resource: number;
  readonly amount: number;
  /** Of equipment, see `flow/model/steps.ts`. */
  readonly part: number;
  readonly draw: number;
}
/** No part of the work. */
const ALL = { part: WHOLE, draw: NO_DRAW };

export interface NeedsRow {
  readonly needs: readonly NeedRow[];
  /** Routes of own parts that join, and of those that come off. */
  readonly own: readonly number[];
  readonly off: readonly number[];
  readonly asksAhead: boolean;
}

export const NO_NEEDS: NeedsRow = { needs: [], own: [], off: [], asksAhead: false };

/** Resources of the crews of a step at a station of a site. */
export const crewNeeds = (step: StationStep, site: string, { ids }: Compilation): NeedsRow['needs'] =>
  Object.entries(step.crew).map(([crew, amount]) => ({ resource: ids.crew(site, crew), amount, ...ALL }));

/** @param claimed people, then equipment */
export function needsRow(step: StationStep, claimed: NeedsRow['needs'], { ids }: Compilation): NeedsRow {
  const parts = Object.entries(step.parts);
  const stocks = parts.flatMap(([part, amount]) =>
    amount === 'own' ? [] : [{ resource: ids.part(part), amount, ...ALL }],
  );
  return {
    needs: [...claimed, ...stocks],
    own: parts.flatMap(([feeder, amount]) => (amount === 'own' ? [ids.feeder(feeder)] : [])),
    off: step.takesOff.map((feeder) => ids.feeder(feeder)),
    asksAhead: step.waitForParts !== undefined,
  };
}

export function needsColumns(rows: readonly NeedsRow[]) {
  const needs = ragged(rows, (row) => row.needs),
    joining = ragged(rows, (row) => row.own),
    off = ragged(rows, (row) => row.off);
  return {
    ...uint8(rows, 'asksAhead'),
    needStart: needs.start,
    needResource: needs.column(({ resource }) => resource),
    needAmount: needs.column(({ amount }) => amount),
    needPart: Uint8Array.from(needs.entries, ({ part }) => part),
    needDraw: needs.column(({ draw }) => draw),
    ownStart: joining.start,
    ownRoute: joining.column(Number),
    offStart: off.start,
    offRoute: off.column(Number),
  };
}
