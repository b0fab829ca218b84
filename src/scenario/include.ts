import type { Assumption } from './assumptions.js';
import { IncludeFiles, type Part } from './include-files.js';
import { isRawMap, mapOf } from './names-outline.js';
import { spotKey } from './parse-plain.js';
import { sayPath, saySeen, type Finding, type Path, type Problem } from './problem.js';
import type { Source } from './source.js';

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

/** How many levels of maps are put together, name by name; of all other sections one. Deeper, a name may be given only once. */
const LEVELS: Readonly<Record<string, number>> = { sites: 3 };

/**
 * Reads what the scenario includes and puts it together: what a file says itself first, then its includes in order.
 * `readFile` gets paths relative to the folder of the scenario and may throw.
 */
export function withIncludes(main: Source, readFile: (relativePath: string) => string): Whole {
  const files = new IncludeFiles(main, readFile);
  const problems: Problem[] = [...files.problems];
  const value: Record<string, unknown> = {};
  /** Path in the whole -> the file and the path there; what lies below is in the same file, unless said otherwise. */
  const origins = new Map<string, { readonly source: Source; readonly path: Path }>([[spotKey([]), { source: main, path: [] }]]);
  /** File and path there of entries of routes -> path in the whole. */
  const moved = new Map<string, Path>();

  const originOf = (path: Path): { source: Source; path: Path } => {
    for (let length = path.length; ; length--) {
      const origin = origins.get(spotKey(path.slice(0, length)));
      if (origin !== undefined) return { source: origin.source, path: [...origin.path, ...path.slice(length)] };
    }
  };
  const place = (finding: Finding): Problem => {
    const { source, path } = originOf(finding.path);
    const problem = source.place({ ...finding, path });
    if (finding.first === undefined) return problem;
    const first = originOf(finding.first), there = first.source.place({ path: first.path, wanted: '', atKey: true });
    return there.file === problem.file ? problem : { ...problem, seen: `${problem.seen ?? ''} (${there.file}:${there.line})` };
  };

  function merge(into: Record<string, unknown>, from: Readonly<Record<string, unknown>>, at: Path, source: Source, levels: number): void {
    for (const [key, inner] of Object.entries(from)) {
      const path = [...at, key], before = into[key];
      if (before === undefined) {
        into[key] = inner;
        if (source !== main) origins.set(spotKey(path), { source, path });
      } else if (levels > 0 && isRawMap(before) && isRawMap(inner)) {
        merge(before as Record<string, unknown>, inner, path, source, (at.length === 0 ? (LEVELS[key] ?? 1) : levels) - 1);
      } else {
        const origin = originOf(path), first = origin.source.place({ path: origin.path, wanted: '', atKey: true });
        problems.push(source.place({ path, wanted: at.length === 0 && key === 'route' ? 'one route, with an entry - include: FILE where a part of it stands' : 'each name once over all files', seen: `${saySeen(key)} again, first at ${first.file}:${first.line}`, atKey: true }));
      }
    }
  }

  for (const { source, hasPlacedRoute } of files.parts) {
    // The note of a part is a remark for those who keep it.
    const isOfWhole = (key: string): boolean => key !== 'include' && !(key === 'route' && hasPlacedRoute) && !(key === 'note' && source !== main);
    merge(value, Object.fromEntries(Object.entries(mapOf(source.value)).filter(([key]) => isOfWhole(key))), [], source, 1);
  }

  /** Entries of a route with those of the files that are named in it, in their place. */
  const spread = (entry: unknown, source: Source, path: Path): { entry: unknown; source: Source; path: Path }[] => {
    if (!isRawMap(entry) || !Object.hasOwn(entry, 'include')) return [{ entry, source, path }];
    const part = files.placedAt(source, path);
    return part === undefined ? [] : (mapOf(part.source.value)['route'] as readonly unknown[]).flatMap((inner, i) => spread(inner, part.source, ['route', i]));
  };
  const spreadRoute = (holder: Record<string, unknown>, at: Path): void => {
    const entries = holder['route'];
    if (!Array.isArray(entries)) return;
    const all = entries.flatMap((entry, i) => { const { source, path } = originOf([...at, i]); return spread(entry, source, path); });
    holder['route'] = all.map(({ entry }) => entry);
    all.forEach(({ source, path }, i) => {
      origins.set(spotKey([...at, i]), { source, path });
      moved.set(spotKey([source.file, ...path]), [...at, i]);
    });
  };
  spreadRoute(value, ['route']);
  for (const [name, feeder] of Object.entries(mapOf(value['feeders']))) if (isRawMap(feeder)) spreadRoute(feeder as Record<string, unknown>, ['feeders', name, 'route']);

  const inWhole = (source: Source, at: Path): Path => {
    for (let length = at.length; length > 0; length--) {
      const to = moved.get(spotKey([source.file, ...at.slice(0, length)]));
      if (to !== undefined) return [...to, ...at.slice(length)];
    }
    return at;
  };
  const assumptions = files.parts.flatMap(({ source }: Part) => source.assumptions.map((said): Assumption => {
    const at = inWhole(source, said.at);
    return { ...said, at, path: sayPath(at) };
  }));
  const sources = files.parts.map(({ source }) => source);
  return {
    value: files.isComplete ? (isRawMap(main.value) ? value : main.value) : undefined,
    assumptions, place,
    faults: sources.flatMap(({ faults }) => faults),
    problems: [...problems, ...sources.flatMap((source) => source.problems)],
  };
}
