import type { Oddity } from '../../../records/oddity.js';
import { capital, count } from '../../../study/format.js';

/** Where rows stand that a table of the terminal leaves out. */
export const IN_FILES = 'in the report (--out) and results.json (--json).';

/** Characters of an example that are shown. */
const SHOWN = 60;

/** What was wrong with rows of records, a line a kind, with the first lines and what became of the rows. */
export const oddRows = (oddities: readonly Oddity[]): string[] =>
  oddities.map(
    ({ count: n, kind, lines, told, example }) =>
      `${kind}, ${count(n, 'row')}: line ${lines.join(', ')}${n > lines.length ? ' and more' : ''}; ` +
      `got ${JSON.stringify(example.slice(0, SHOWN))}. ${capital(told)}${told.endsWith('.') ? '' : '.'}`,
  );
