import type { Choice } from '../choice.js';
import type { Selected } from '../select.js';
import type { Layout, Spot } from '../spots.js';
import type { Bar } from './bar.js';
import type { Search } from './search.js';
import type { Tried } from './tried.js';

/** What a layout is looked for with. */
export interface Hunt {
  readonly search: Search;
  readonly choice: Choice;
  readonly trials: Tried;
  /** Replications that the search has not seen. */
  readonly fresh: Tried;
  readonly spots: readonly Spot[];
  readonly present: Layout;
  readonly least: Layout;
  /** No limit anywhere; its replications of the search are known. */
  readonly unlimited: Layout;
  /** What arithmetic allows, in the unit of the study; Infinity where it does not tell. */
  readonly ceiling: number;
  /** Where the search begins; null: where the first look at a few layouts says. */
  readonly start: Layout | null;
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
  /** What the target asks; null for a budget. */
  readonly bar: Bar | null;
  /** Whether a layout of the search reaches the target; true for a budget. */
  readonly isReached: boolean;
  /** Fresh replications by which it was chosen. */
  readonly rounds: number;
  /** How many layouts there are within the budget, where all were tried; null: they were not. */
  readonly within: number | null;
  /** How many layouts have fewer places than the chosen one, where all were tried; null: they were not. */
  readonly fewer: number | null;
}
