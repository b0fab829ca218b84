import { posix } from 'node:path';
import type { Path, Problem } from '../../types/problem.js';
import { isRawMap, listOf, mapOf } from '../../values/raw.js';
import { A_PART } from '../ours.js';
import { pathFrom } from '../paths.js';
import { spotKey } from '../plain.js';
import { saySeen } from '../problem.js';
import { readSource, type Source } from '../source.js';

/** One file of a scenario. */
export interface Part {
  readonly source: Source;
  /** Seen from the folder of the scenario. */
  readonly path: string;
  /** Its route stands where an entry of another route names the file. */
  hasPlacedRoute: boolean;
}

/** How deep files may include each other, and how many they may be. */
const DEEPEST = 8,
  MOST = 100;
const WANTED = 'the name of a file, or a list of them, such as [paint.yaml, final-plant.yaml]';

/** All files of a scenario, each once, in the order in which they are named; the scenario itself first. */
export class IncludeFiles {
  readonly parts: Part[] = [];
  readonly problems: Problem[] = [];
  /** False if a file could not be read or parsed. */
  isComplete = true;
  private readonly byPath = new Map<string, Part>();
  private readonly placed = new Map<string, Part>();
  private readonly folder: string;

  constructor(
    main: Source,
    private readonly readFile: (relativePath: string) => string,
  ) {
    this.folder = posix.dirname(main.file);
    this.add(main, posix.basename(main.file), []);
  }

  /**
   * The file whose route stands in the place of an entry `- include: ...`; undefined if there is something
   * wrong with it.
   */
  placedAt(source: Source, path: Path): Part | undefined {
    return this.placed.get(spotKey([source.file, ...path]));
  }

  private add(source: Source, path: string, around: readonly string[]): Part {
    const part: Part = { source, path, hasPlacedRoute: false };
    this.parts.push(part);
    this.byPath.set(path, part);
    if (source.value === undefined) this.isComplete = false;
    const chain = [...around, path];
    const { include, route, feeders } = mapOf(source.value);
    if (include !== undefined) {
      const names = listOf(include);
      if (names.length === 0) this.wrong(source, ['include'], WANTED, saySeen(include));
      names.forEach((name, i) =>
        this.open(name, source, Array.isArray(include) ? ['include', i] : ['include'], chain),
      );
    }
    this.inRoute(route, source, ['route'], chain);
    for (const [name, feeder] of Object.entries(mapOf(feeders)))
      this.inRoute(mapOf(feeder)['route'], source, ['feeders', name, 'route'], chain);
    return part;
  }

  private inRoute(route: unknown, source: Source, at: Path, chain: readonly string[]): void {
    if (!Array.isArray(route)) return;
    route.forEach((entry: unknown, i) => {
      if (!isRawMap(entry) || !Object.hasOwn(entry, 'include')) return;
      const path = [...at, i, 'include'];
      const other = Object.keys(entry).find((key) => key !== 'include');
      if (other !== undefined)
        this.wrong(
          source,
          [...at, i, other],
          'nothing beside include in an entry of a route',
          JSON.stringify(other),
          true,
        );
      const part = this.open(entry['include'], source, path, chain);
      if (part === undefined) return;
      if (!Array.isArray(mapOf(part.source.value)['route'])) {
        if (part.source.value !== undefined)
          this.wrong(source, path, 'a file with a route', `${saySeen(entry['include'])}, which has none`);
      } else if (part.hasPlacedRoute) {
        this.wrong(source, path, 'the route of a file in one place', `${saySeen(entry['include'])} again`);
      } else {
        part.hasPlacedRoute = true;
        this.placed.set(spotKey([source.file, ...at, i]), part);
      }
    });
  }

  /** Reads a file that is named at `at`, unless that was done before. */
  private open(name: unknown, source: Source, at: Path, chain: readonly string[]): Part | undefined {
    if (typeof name !== 'string' || name.trim() === '' || /[\t\n]/.test(name)) {
      this.wrong(source, at, WANTED, saySeen(name));
      return;
    }
    const path = pathFrom(posix.dirname(chain.at(-1) ?? ''), name);
    if (chain.includes(path)) {
      this.wrong(
        source,
        at,
        'no file that includes itself',
        [...chain.slice(chain.indexOf(path)), path].join(', which includes '),
      );
      return;
    }
    const before = this.byPath.get(path);
    if (before !== undefined) return before;
    if (chain.length > DEEPEST) {
      this.wrong(source, at, `files included at most ${DEEPEST} deep`, 'a deeper one');
      return;
    }
    if (this.parts.length > MOST) {
      this.wrong(source, at, `at most ${MOST} files included`, 'more');
      return;
    }
    let text: string;
    try {
      text = this.readFile(path);
    } catch (error) {
      this.wrong(
        source,
        at,
        'a YAML file that can be read, path relative to the file that names it ' +
          `(${error instanceof Error ? error.message : String(error)})`,
        saySeen(name),
      );
      return;
    }
    const read = readSource(text, pathFrom(this.folder, path), posix.dirname(path), A_PART);
    return this.add(read, path, chain);
  }

  private wrong(
    source: Source,
    path: Path,
    wanted: string,
    seen: string | undefined,
    atKey = false,
  ): undefined {
    this.isComplete = false;
    this.problems.push(source.place({ path, wanted, seen, atKey }));
    return undefined;
  }
}
