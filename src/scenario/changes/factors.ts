import { digest } from '../digest.js';
import { FACTORS } from '../file/ours.js';
import { saySeen, sortProblems } from '../file/problem.js';
import { readSource } from '../file/source.js';
import { parseYaml } from '../file/yaml.js';
import { changedAndMade } from '../made/changed.js';
import type { Problem } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { nearest } from '../values/nearest.js';
import { isRawMap, mapOf, textOf } from '../values/raw.js';
import { changeable } from '../what-ifs.js';
import type { Asked, Change, Wrong } from './edit.js';
import { combinations, FRACTIONS, type Fraction } from './fractions.js';
import { type AskedFactor, readFactor } from './levels.js';

/** One of the things that are varied, with its levels. */
export interface Factor {
  readonly name: string;
  readonly note: string | null;
  /** What each changes in the scenario; none: it is as the scenario. */
  readonly levels: readonly { readonly name: string; readonly changes: readonly Change[] }[];
}
/** One combination of levels: the number of the level of each factor, from 0, and the scenario with them. */
export interface Combination {
  readonly levels: readonly number[];
  readonly changes: readonly Change[];
  readonly scenario: Scenario;
}
/** Factors and the combinations that are run, in standard order: the first factor changes fastest. */
export interface Factors {
  readonly factors: readonly Factor[];
  /** Null: all combinations. */
  readonly fraction: Fraction | null;
  readonly combinations: readonly Combination[];
}
export type FactorsRead =
  | { readonly factors: Factors; readonly problems?: undefined }
  | { readonly factors?: undefined; readonly problems: readonly Problem[] };

const FEWEST = 2,
  MOST = 5;
/** Problems after which no more combinations are tried. */
const ENOUGH = 50;
const DESIGNS = ['full', 'half', 'quarter'];

/**
 * Reads factors of a scenario that was read without a problem from `base`, and makes its combinations; each
 * is checked like a scenario, and what is then wrong is said at the line of the level. As `readWhatIfs`.
 */
export function readFactors(
  text: string,
  file: string,
  base: { readonly text: string; readonly file: string },
  readFile: (relativePath: string) => string,
): FactorsRead {
  const source = readSource(text, file, '.', FACTORS),
    notes = mapOf(mapOf(source.value === undefined ? undefined : parseYaml(text, file).value)['factors']),
    problems: Problem[] = [...source.faults, ...source.problems];
  // The same is wrong in many combinations, and said of the first.
  const known = new Set<string>();
  const wrong: Wrong = (path, label, finding) => {
    const key = JSON.stringify([path, finding.wanted, finding.seen]);
    if (known.has(key)) return;
    known.add(key);
    problems.push({ ...source.place({ ...finding, path }), path: label });
  };
  const failed = (): FactorsRead => ({ problems: sortProblems(problems, file) });
  if (source.value === undefined) return failed();

  const top = mapOf(source.value),
    entries = Object.entries(mapOf(top['factors']));
  for (const key of Object.keys(top).filter((each) => each !== 'factors' && each !== 'design'))
    wrong([key], key, {
      wanted: 'factors and design',
      seen: JSON.stringify(key),
      suggestion: nearest(key, ['factors', 'design']),
      atKey: true,
    });
  if (entries.length < FEWEST || entries.length > MOST)
    wrong('factors' in top ? ['factors'] : [], 'factors', {
      wanted: `${FEWEST} to ${MOST} factors, each a name with its levels`,
      seen: isRawMap(top['factors']) ? String(entries.length) : saySeen(top['factors']),
      atKey: true,
    });
  const asked = entries.map(([name, entry]) => readFactor(name, entry, mapOf(notes[name])['note'], wrong)),
    fraction = readDesign(top['design'], asked, wrong);
  if (problems.length > 0) return failed();

  const same = changeable(base, readFile),
    found = combinations(
      asked.map(({ levels }) => levels.length),
      fraction,
    ).flatMap((levels): Combination[] => {
      if (problems.length >= ENOUGH) return [];
      const of = combinationName(asked, levels),
        done = changedAndMade(same, asksOf(asked, levels), { ...TOGETHER, of }, wrong);
      return done === undefined ? [] : [{ levels, ...done }];
    });
  if (problems.length === 0) checkDifferent(found, asked, wrong);
  if (problems.length > 0) return failed();
  return { factors: { factors: told(asked, found), fraction, combinations: found } };
}

const TOGETHER = { at: ['factors'], is: 'this combination of levels' } as const;

/** `colour booths 2, painters [8, 7]` */
export const combinationName = (factors: NamedLevels, levels: readonly number[]): string =>
  factors.map(({ name, levels: all }, f) => `${name} ${all[levels[f] ?? 0]?.name ?? ''}`).join(', ');

/** Factors as far as they are named. */
export type NamedLevels = readonly {
  readonly name: string;
  readonly levels: readonly { readonly name: string }[];
}[];

const asksOf = (factors: readonly AskedFactor[], levels: readonly number[]): Asked[] =>
  factors.flatMap((factor, f) => factor.levels[levels[f] ?? 0]?.asked ?? []);

function readDesign(given: unknown, factors: readonly AskedFactor[], wrong: Wrong): Fraction | null {
  if (given === undefined || given === 'full') return null;
  const fault = (wanted: string, seen = saySeen(given), suggestion?: string): null => {
    wrong(['design'], 'design', { wanted, seen, suggestion });
    return null;
  };
  if (typeof given !== 'string' || !DESIGNS.includes(given))
    return fault(`one of ${DESIGNS.join(', ')}`, saySeen(given), nearest(textOf(given), DESIGNS));
  const three = factors.find(({ levels }) => levels.length > 2),
    [first] = FRACTIONS.filter(({ name }) => name === given);
  if (three !== undefined)
    return fault('full, or factors with two levels each', `three levels of "${three.name}"`);
  const fraction = FRACTIONS.find(({ name, factors: many }) => name === given && many === factors.length);
  if (fraction === undefined && factors.length >= FEWEST && factors.length <= MOST)
    return fault(`full, or at least ${first?.factors ?? MOST} factors`, `${factors.length} factors`);
  return fraction ?? null;
}

/** Levels that make no difference are a slip. */
function checkDifferent(found: readonly Combination[], asked: readonly AskedFactor[], wrong: Wrong): void {
  const known = new Map<string, Combination>();
  for (const each of found) {
    const key = digest(each.scenario),
      twin = known.get(key),
      f = twin === undefined ? -1 : each.levels.findIndex((level, i) => level !== twin.levels[i]),
      factor = asked[f];
    known.set(key, each);
    if (factor !== undefined)
      wrong(['factors', factor.name, 'levels'], factor.name, {
        wanted: 'levels that differ',
        seen: `the same scenario with "${factor.levels[twin?.levels[f] ?? 0]?.name ?? ''}" and "${
          factor.levels[each.levels[f] ?? 0]?.name ?? ''
        }"`,
        atKey: true,
      });
  }
}

/** What each level changes, as the first combination with it tells it: one for each change that is asked. */
const told = (asked: readonly AskedFactor[], found: readonly Combination[]): Factor[] =>
  asked.map(({ name, note, levels }, f) => ({
    name,
    note,
    levels: levels.map((level, l) => {
      const { levels: those, changes } = found.find((each) => each.levels[f] === l) ?? NONE,
        before = asksOf(asked.slice(0, f), those).length;
      return { name: level.name, changes: changes.slice(before, before + level.asked.length) };
    }),
  }));

const NONE = { levels: [], changes: [] };
