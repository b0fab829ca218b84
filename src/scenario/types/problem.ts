/** Where something stands in a scenario: keys of maps and places in lists (from 0). */
export type Path = readonly (string | number)[];

/** What is wrong in a file, as data; the wording is composed by `sayProblem`. */
export interface Problem {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1. */
  readonly column: number;
  /** As a planner reads it: `route[3].crew.painters`; empty for the file as a whole. */
  readonly path: string;
  /** What would be right. */
  readonly wanted: string;
  /** What stands there, as shown to the planner; undefined where nothing stands there. */
  readonly seen: string | undefined;
  /** A known word close to the one seen. */
  readonly suggestion: string | undefined;
}

/** A problem before its line is known. */
export interface Finding {
  readonly path: Path;
  readonly wanted: string;
  readonly seen?: string | undefined;
  readonly suggestion?: string | undefined;
  /** Point at the key instead of its value. */
  readonly atKey?: boolean;
  /** Where a name that is given twice was first given; told with file and line if that is another file. */
  readonly first?: Path | undefined;
  /** Another file than the scenario, for observed times. */
  readonly source?: { readonly file: string; readonly line: number; readonly column: number } | undefined;
}
