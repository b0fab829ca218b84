import { commandLines, readLines } from './command-lines.js';
import { journals, shards } from './damage.js';
import type { AnyKind } from './kinds.js';
import { mildTrees, tables, texts, trees } from './scenarios.js';
import { studies } from './studies.js';
import { comparisons, whatIfs } from './what-ifs.js';

export const KINDS: readonly AnyKind[] = [
  trees,
  mildTrees,
  texts,
  tables,
  whatIfs,
  comparisons,
  readLines,
  commandLines,
  shards,
  journals,
  studies,
];
