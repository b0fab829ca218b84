import type { Choice } from '../choice.js';
import type { Selected } from '../select.js';
import type { Layout } from '../spots.js';
import type { Search } from './search.js';
import type { Trials } from './trials.js';

/** What a layout is looked for with. */
export interface Hunt {
  readonly search: Search;
  readonly choice: Choice;
  readonly trials: Trials;
  /** Replications that the search has not seen. */
  readonly fresh: Trials;
  readonly present: Layout;
  readonly least: Layout;
  /** Where the search begins. */
  readonly start: Layout;
  /** Relative difference that does not matter. */
  readonly zone: number;
  /** Of each layout in the search. */
  readonly replications: number;
  readonly onStage?: ((text: string) => void) | undefined;
}

/** What was found. */
export interface Found {
  readonly chosen: Selected;
  /** The best layout for the whole budget; null for a target. */
  readonly best: Layout | null;
  /** Places of a target that reach it in the search, or nothing does; null for a budget. */
  readonly ample: Layout | null;
  /** Fresh replications by which it was chosen. */
  readonly rounds: number;
}
