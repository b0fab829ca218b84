import { namedChanges } from '../changes/possible.js';
import { saySeen } from '../file/problem.js';
import type { NamedRelief } from '../types/possible.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { nearest } from '../values/nearest.js';
import { once } from '../values/raw.js';
import { reliefsOf } from './kinds.js';
import type { Relief } from './relief.js';

/** Asked again and again of a scenario, by those who try sets. */
const reliefsIn = once((scenario: Scenario): readonly Relief[] => reliefsOf(scenario));

/** The relief of a scenario that is named, or why none is: what would be right at which key. */
export type FoundRelief =
  | { readonly relief: Relief; readonly fault?: undefined }
  | { readonly relief?: undefined; readonly fault: Omit<Finding, 'path'> & { readonly key: string } };

/** Looks a relief up in a scenario as it stands. */
export function findRelief(scenario: Scenario, { kind, of, site, which }: NamedRelief): FoundRelief {
  const ofKind = reliefsIn(scenario).filter((each) => each.kind === kind),
    named = ofKind.filter((each) => each.of.name === of),
    here = named.filter((each) => site === undefined || each.of.site === site),
    exact = here.filter((each) => each.which === which);
  if (named.length === 0)
    return {
      fault: {
        key: 'of',
        wanted: `a name of which reliefs knows ${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`,
        seen: saySeen(of),
        suggestion: nearest(of, new Set(ofKind.map((each) => each.of.name))),
      },
    };
  if (here.length === 0) return { fault: { key: 'site', wanted: sitesOf(named), seen: saySeen(site) } };
  const found = exact.length > 0 || which !== undefined ? exact : here,
    [relief, ...others] = found;
  if (relief === undefined) return { fault: { key: 'which', wanted: whichOf(here), seen: saySeen(which) } };
  if (others.length === 0) return { relief };
  return new Set(found.map((each) => each.of.site)).size > 1
    ? { fault: { key: 'site', wanted: sitesOf(found), seen: 'none', atKey: true } }
    : { fault: { key: 'which', wanted: whichOf(found), seen: 'none', atKey: true } };
}

const oneOf = (words: readonly string[]): string => `one of ${[...new Set(words)].map(saySeen).join(', ')}`;
const sitesOf = (reliefs: readonly Relief[]): string => oneOf(reliefs.map(({ of }) => of.site));
const whichOf = (reliefs: readonly Relief[]): string => {
  const words = reliefs.flatMap(({ which }) => which ?? []);
  return words.length === 0 ? 'no which: there is only one' : oneOf(words);
};

/** Possible changes of a sound scenario whose relief is none of those that `reliefs` knows of it. */
export function* unknownReliefs(scenario: Scenario): Iterable<Finding> {
  for (const { name, relief } of namedChanges(scenario)) {
    const fault = relief === undefined ? undefined : findRelief(scenario, relief).fault;
    if (fault === undefined) continue;
    const { key, ...rest } = fault,
      isThere = key === 'of' || rest.atKey !== true;
    yield { ...rest, path: ['costs', 'changes', name, ...(isThere ? [key] : [])] };
  }
}
