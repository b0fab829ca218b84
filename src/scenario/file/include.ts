import type { Finding, Path, Problem } from '../types/problem.js';
import type { Assumption } from '../types/scenario.js';
import { isRawMap, mapOf, type RawMap } from '../values/raw.js';
import { wordsFor } from '../words/words.js';
import { IncludeFiles } from './include-files.js';
import { spotKey } from './plain.js';
import { sayPath, saySeen } from './problem.js';
import type { Source } from './source.js';

/** Where something stands: a file and the path in it. */
export interface Origin {
  readonly source: Source;
  readonly path: Path;
}

/**
 * Of what file each part of the whole is; what lies below a path is of the same file, unless said otherwise.
 */
export class Origins {
  private readonly byPath = new Map<string, Origin>();
  /** Entries of routes, which do not keep their number: file and path there -> path in the whole. */
  private readonly moved = new Map<string, Path>();

  constructor(private readonly main: Source) {}

  set(path: Path, origin: Origin): void {
    this.byPath.set(spotKey(path), origin);
  }

  setEntry(path: Path, origin: Origin): void {
    this.set(path, origin);
    this.moved.set(spotKey([origin.source.file, ...origin.path]), path);
  }

  of(path: Path): Origin {
    for (let length = path.length; length > 0; length--) {
      const origin = this.byPath.get(spotKey(path.slice(0, length)));
      if (origin !== undefined)
        return { source: origin.source, path: [...origin.path, ...path.slice(length)] };
    }
    return { source: this.main, path };
  }

  /** The path in the whole of what stands at a path of a file. */
  inWhole(source: Source, path: Path): Path {
    for (let length = path.length; length > 0; length--) {
      const to = this.moved.get(spotKey([source.file, ...path.slice(0, length)]));
      if (to !== undefined) return [...to, ...path.slice(length)];
    }
    return path;
  }

  /** Adds file and line; the path is then that in the file. */
  place(finding: Finding): Problem {
    const { source, path } = this.of(finding.path);
    const problem = source.place({ ...finding, path });
    if (finding.first === undefined) return problem;
    const first = this.lineOf(finding.first);
    return first.file === problem.file
      ? problem
      : { ...problem, seen: `${problem.seen ?? ''} (${first.file}:${first.line})` };
  }

  /** The line of the key at a path of the whole. */
  lineOf(path: Path): { readonly file: string; readonly line: number } {
    const origin = this.of(path);
    return origin.source.place({ path: origin.path, wanted: '', atKey: true });
  }
}

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

  const sources = files.parts.map(({ source }) => source);
  return {
    value: !files.isComplete ? undefined : isRawMap(main.value) ? value : main.value,
    assumptions: toldApart(
      sources.flatMap((source) =>
        source.assumptions.map((said): Assumption => {
          const at = origins.inWhole(source, said.at);
          return { ...said, at, path: sayPath(at), words: wordsFor(at, value) };
        }),
      ),
    ),
    faults: sources.flatMap(({ faults }) => faults),
    problems: [...files.problems, ...twice, ...sources.flatMap(({ problems }) => problems)],
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
