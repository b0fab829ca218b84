import type { Finding, Path, Problem } from '../../types/problem.js';
import type { Assumption } from '../../types/scenario.js';
import { isRawMap, mapOf, type RawMap } from '../../values/raw.js';
import { wordsFor } from '../../words/words.js';
import { sayPath, saySeen } from '../problem.js';
import type { Source } from '../source.js';
import { IncludeFiles } from './include-files.js';
import { MEASURED, withMeasured } from './measured.js';
import { type Origin, Origins } from './origins.js';

/** A scenario with all that it includes, as one piece of data. */
export interface Whole {
  /** Undefined if a file could not be read. */
  readonly value: unknown;
  readonly assumptions: readonly Assumption[];
  readonly faults: readonly Problem[];
  readonly problems: readonly Problem[];
  /** Adds file and line; the path is then that in the file. */
  readonly place: (finding: Finding) => Problem;
}

/**
 * How many levels of maps are put together, name by name; of all other sections one. Deeper, a name may be
 * given only once. Of costs three, so that a file can say what is made of changes that another one names.
 */
const LEVELS: Readonly<Record<string, number>> = { sites: 3, costs: 3 };

/**
 * Reads what the scenario includes and puts it together: what a file says itself first, then its includes in
 * order. `readFile` gets paths relative to the folder of the scenario and may throw.
 */
export function withIncludes(main: Source, readFile: (relativePath: string) => string): Whole {
  const files = new IncludeFiles(main, readFile),
    origins = new Origins(main);
  const value: Record<string, unknown> = {};
  const twice: Problem[] = [];

  function merge(
    into: Record<string, unknown>,
    from: RawMap,
    at: Path,
    source: Source,
    levels: number,
  ): void {
    for (const [key, inner] of Object.entries(from)) {
      const path = [...at, key],
        before = into[key];
      if (before === undefined) {
        into[key] = inner;
        if (source !== main) origins.set(path, { source, path });
      } else if (levels > 0 && isRawMap(before) && isRawMap(inner)) {
        merge(before, inner, path, source, (at.length === 0 ? (LEVELS[key] ?? 1) : levels) - 1);
      } else {
        const first = origins.lineOf(path);
        const wanted =
          at.length === 0 && key === 'route'
            ? 'one route, with an entry - include: FILE where a part of it stands'
            : 'each name once over all files';
        twice.push(
          source.place({
            path,
            wanted,
            seen: `${saySeen(key)} again, first at ${first.file}:${first.line}`,
            atKey: true,
          }),
        );
      }
    }
  }
  for (const { source, hasPlacedRoute } of files.parts) {
    // The note of a part is a remark for those who keep it; that of a whole scenario goes with its name.
    const hasNote =
      source === main || (value['scenario'] === undefined && mapOf(source.value)['scenario'] !== undefined);
    const isOfWhole = (key: string): boolean =>
      key !== 'include' &&
      !(key === 'route' && hasPlacedRoute) &&
      !(key === 'note' && !(hasNote && value['note'] === undefined));
    merge(
      value,
      Object.fromEntries(Object.entries(mapOf(source.value)).filter(([key]) => isOfWhole(key))),
      [],
      source,
      1,
    );
  }
  spreadRoute(value, ['route'], files, origins);
  for (const [name, feeder] of Object.entries(mapOf(value['feeders'])))
    if (isRawMap(feeder)) spreadRoute(feeder, ['feeders', name, 'route'], files, origins);

  const sources = files.parts.map(({ source }) => source),
    measured = withMeasured(value, origins);
  return {
    value: !files.isComplete ? undefined : isRawMap(main.value) ? measured.value : main.value,
    assumptions: toldApart(
      sources.flatMap((source) =>
        source.assumptions.flatMap((said): Assumption[] => {
          const at = origins.inWhole(source, said.at),
            inPlace = { ...said, at, path: sayPath(at) };
          return (said.at[0] === MEASURED ? [inPlace] : measured.said(inPlace)).map((each) => ({
            ...each,
            words: wordsFor(at, measured.value),
          }));
        }),
      ),
    ),
    faults: sources.flatMap(({ faults }) => faults),
    problems: [
      ...files.problems,
      ...twice,
      ...sources.flatMap(({ problems }) => problems),
      ...(files.isComplete ? measured.problems : []),
    ],
    place: (finding) => origins.place(finding),
  };
}

/** Where two would be called alike, such as two ways to fail of one station, their paths are said too. */
function toldApart(all: readonly Assumption[]): Assumption[] {
  const times = new Map<string, number>();
  for (const { words } of all) times.set(words, (times.get(words) ?? 0) + 1);
  return all.map((each) =>
    (times.get(each.words) ?? 0) > 1 ? { ...each, words: `${each.words} (${each.path})` } : each,
  );
}

/** Puts the routes of files in the place of the entries that name them. */
function spreadRoute(holder: Record<string, unknown>, at: Path, files: IncludeFiles, origins: Origins): void {
  const { route } = holder;
  if (!Array.isArray(route)) return;
  const spread = (entry: unknown, origin: Origin): { readonly entry: unknown; readonly origin: Origin }[] => {
    if (!isRawMap(entry) || !Object.hasOwn(entry, 'include')) return [{ entry, origin }];
    const source = files.placedAt(origin.source, origin.path)?.source;
    return source === undefined
      ? []
      : (mapOf(source.value)['route'] as readonly unknown[]).flatMap((inner, i) =>
          spread(inner, { source, path: ['route', i] }),
        );
  };
  const all = route.flatMap((entry, i) => spread(entry, origins.of([...at, i])));
  holder['route'] = all.map(({ entry }) => entry);
  all.forEach(({ origin }, i) => {
    origins.setEntry([...at, i], origin);
  });
}
