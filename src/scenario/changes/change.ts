import { checked } from '../checked.js';
import { crossFindings } from '../checks.js';
import { sayPath, saySeen } from '../file/problem.js';
import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { isRawMap, listOf, mapOf } from '../values/raw.js';
import {
  type Asked,
  type Change,
  type Changeable,
  type Edit,
  editedBy,
  saidOf,
  type Together,
  type Wrong,
} from './edit.js';
import { readScale, scaleLabel, scalePath, withScale } from './scale-key.js';
import type { Scale } from './scaled.js';

const WANTED = 'path: new value, remove: path or scale: { spread: 1.5 }';

/** The changes that a list (or a map) of them asks for. */
export function askedOf(changes: unknown, at: Path, of: string, wrong: Wrong): Asked[] {
  return listOf(changes).flatMap((item, i): Asked[] => {
    const here = Array.isArray(changes) ? [...at, i] : at;
    if (!isRawMap(item) || Object.keys(item).length === 0)
      wrong(here, of, { wanted: WANTED, seen: saySeen(item) });
    return Object.entries(mapOf(item)).map(([key, given]) => ({ key, given, at: [...here, key], of }));
  });
}

/** Programme keys that must stay, or weeks could not be set side by side. */
const SAME_TIME = ['start', 'zone', 'lengthMin', 'warmUpMin'] as const;

/** A scenario as written, with changes. */
export interface Changed {
  readonly scenario: Scenario;
  readonly changes: readonly Change[];
  /** As data, and what that is, before its scales. */
  readonly edited: Pick<Changeable, 'value' | 'scenario'>;
  readonly edits: readonly Edit[];
  /** Makes the scales in another scenario; what is then wrong is told as it was for this. */
  readonly scale: (scenario: Scenario) => Scenario;
}

/**
 * The scenario with all these changes, told in words; undefined where something is wrong. Paths come first,
 * in their order, then scales, each on what the others left; the whole is checked like a scenario. What it
 * says is made is not made in it.
 */
export function changedBy(
  base: Changeable,
  asked: readonly Asked[],
  named: Together,
  wrong: Wrong,
): Changed | undefined {
  const edits: Edit[] = [],
    changes = new Map<Asked, Change>();
  let value = base.value;
  const told = { count: 0 };
  const fault: Wrong = (...what) => {
    told.count++;
    wrong(...what);
  };
  for (const each of asked)
    if (each.key !== 'scale') {
      const done = editedBy(value, each, edits, named, fault);
      if (done === null) continue;
      value = done.value;
      edits.push({ ...each, path: done.path });
      changes.set(each, done.change);
    }
  if (told.count > 0) return undefined;

  const { scenario, findings } =
    edits.length === 0 ? { ...base, findings: [] } : checked(value, base.readFile);
  for (const finding of findings) saidOf(finding, edits, named, base, fault);
  if (scenario === undefined || told.count > 0) return undefined;
  const scale = (from: Scenario): Scenario => {
    let scaled = from;
    for (const each of asked.filter(({ key }) => key === 'scale')) {
      const done = scaledBy(scaled, each, fault);
      if (done === undefined) continue;
      for (const finding of crossFindings(done.scenario, true))
        fault(each.at, `${each.of}: ${sayPath(finding.path)}`, { ...finding, atKey: true });
      scaled = done.scenario;
      if (!changes.has(each)) changes.set(each, done.change);
    }
    return scaled;
  };
  const scaled = scale(scenario);
  const moved = SAME_TIME.find((key) => scaled.programme[key] !== base.scenario.programme[key]);
  if (moved !== undefined)
    fault(named.at, named.of, {
      wanted:
        'start, zone, length and warm up of the programme as in the scenario, so that weeks can be compared',
      atKey: true,
    });
  return told.count === 0
    ? {
        scenario: { ...scaled, assumptions: base.assumptions },
        changes: asked.flatMap((each) => changes.get(each) ?? []),
        edited: { value, scenario },
        ...{ edits, scale },
      }
    : undefined;
}

/** Makes one change by a factor. */
function scaledBy(
  scenario: Scenario,
  { given, at, of }: Asked,
  wrong: Wrong,
): { readonly scenario: Scenario; readonly change: Change } | undefined {
  const scale = readScale(given),
    done = 'fault' in scale ? scale : withScale(scenario, scale);
  if ('fault' in done) {
    const { key, ...finding } = done.fault;
    const isMap = key !== undefined && isRawMap(given);
    wrong(isMap ? [...at, key] : at, `${of}: ${scaleLabel(given)}`, finding);
    return undefined;
  }
  const { factor } = scale as Scale;
  return {
    scenario: done.scenario,
    change: { path: scalePath(scale as Scale), words: done.words, before: '1', after: String(factor) },
  };
}
