import { createReadStream, statSync } from 'node:fs';
import system from 'node:path';
import { parse } from 'yaml';
import type { Model } from '../../../flow/model/model.js';
import { type Known, readLog } from '../../../records/log/read.js';
import type { Mapping } from '../../../records/names.js';
import { WallClock } from '../../../records/table/wall-clock.js';
import { Unreadable } from '../../../records/unreadable.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { LogSource } from '../../../study/validate/types.js';
import { inFront } from '../../front/in-front.js';
import { readInput } from '../../load.js';
import { systemReason, UsageError } from '../../usage-error.js';

const SORTS = ['steps', 'stations', 'options', 'defects'] as const;

/** What the log calls things, as a planner keeps it in a file. */
export function readNames(path: string): Mapping {
  const refuse = (seen: string): UsageError =>
    new UsageError(
      `${path}: expected maps from names of the log to names of the scenario, got ${seen}`,
      'for example `steps: { "WIRING 2": wire }`; the others are stations, options, defects',
    );
  let read: unknown;
  try {
    read = parse(readInput(path, 'a file of names'));
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw refuse((error as Error).message.split('\n', 1)[0] ?? 'no YAML');
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read)) throw refuse('no map');
  const mapping: Record<string, Record<string, string>> = {};
  for (const [sort, names] of Object.entries(read)) {
    if (!SORTS.some((each) => each === sort)) throw refuse(JSON.stringify(sort));
    if (typeof names !== 'object' || names === null) throw refuse(`no map of ${sort}`);
    mapping[sort] = Object.fromEntries(
      Object.entries(names as Record<string, unknown>).map(([from, to]) => {
        if (typeof to !== 'string') throw refuse(`${JSON.stringify(to)} for ${JSON.stringify(from)}`);
        return [from, to];
      }),
    );
  }
  return mapping;
}

/** What a scenario knows of a log of its floor. */
function knownOf({ sites }: Scenario, model: Model, names: Mapping | undefined): Known {
  const { steps, stations, lanes, siteNames, sideBySide } = model,
    clocks = new Map<string, WallClock>(),
    siteOf = (step: string, station: string): string | undefined => {
      const id = stations.names.indexOf(station),
        at = id >= 0 ? id : (steps.station[steps.names.indexOf(step)] ?? -1),
        lane = at >= 0 ? -1 : lanes.names.indexOf(step);
      return siteNames[at >= 0 ? (stations.site[at] ?? -1) : (lanes.from[lane] ?? -1)];
    };
  const group = (step: string): number => sideBySide.group[steps.names.indexOf(step)] ?? -1;
  return {
    steps: steps.names,
    stations: [...stations.names, ...lanes.names],
    ...(names === undefined ? {} : { names }),
    clockOf: (step, station) => {
      const zone = sites[siteOf(step, station) ?? '']?.zone;
      if (zone === undefined) return undefined;
      const clock = clocks.get(zone) ?? new WallClock(zone);
      clocks.set(zone, clock);
      return clock;
    },
    mayBoth: (one, other) => group(one) >= 0 && group(one) === group(other),
  };
}

/** A floor log in a file, read against a scenario; it is read more than once, so it cannot be a pipe. */
export function logSource(
  path: string,
  scenario: Scenario,
  model: Model,
  names: Mapping | undefined,
): LogSource {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat?.isFile() !== true)
    throw new UsageError(
      `LOG: expected a file that can be read, got ${stat === undefined ? 'none' : 'no file'}: ${path}`,
      'give the path of a floor log, CSV',
    );
  const known = knownOf(scenario, model, names);
  return {
    file: system.basename(path),
    read: async (take) => {
      inFront().tell({ kind: 'busy', args: [`reading ${path}`] });
      try {
        return await readLog(() => createReadStream(path), known, take);
      } catch (error) {
        if (error instanceof Unreadable) throw new UsageError(`${path}: ${error.message}`, error.remedy);
        const reason = systemReason(error);
        if (reason === undefined) throw error;
        throw new UsageError(`${path}: expected a file that can be read, got ${reason}`);
      }
    },
  };
}
