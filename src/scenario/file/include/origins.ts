import type { Finding, Path, Problem } from '../../types/problem.js';
import { spotKey } from '../plain.js';
import type { Source } from '../source.js';

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
