import fc from 'fast-check';
import { anyKind } from './batch.js';
import { judgeRead, type Verdict } from './demands.js';
import type { Shown } from './kinds.js';
import type { Reader } from './reader.js';
import { hostileName, hostileNumber } from './spoilt/hostile.js';
import { DEMO, type Files, fileOf, SOURCES } from './spoilt/sources.js';
import { csvEdits, editedText, type TextEdit, yamlEdits } from './spoilt/texts.js';
import { editedTree, mildEdits, type TreeEdit, treeEdits } from './spoilt/trees.js';

/** A scenario with one of its files changed. */
export interface Spoilt {
  readonly main: string;
  readonly files: Files;
}

const source = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom(...SOURCES) },
  { weight: 1, arbitrary: fc.constant(DEMO) },
);

const readAndRun = async ({ main, files }: Spoilt, reader: Reader): Promise<Verdict> =>
  judgeRead(await reader.ask({ text: files[main] ?? '', file: main, files, run: true }));
const showFiles = ({ main, files }: Spoilt): Shown => ({
  ...files,
  'command.txt': `rateproof simulate ${main}\n`,
});

type OfSource<Edit> = {
  readonly of: (typeof SOURCES)[number];
  readonly which: number;
  readonly edits: Edit[];
};
const isYaml = (name: string): boolean => name.endsWith('.yaml');

function spoiltTree({ of, which, edits }: OfSource<TreeEdit>): Spoilt {
  const chosen = fileOf(of, which),
    name = isYaml(chosen) ? chosen : of.main;
  return { main: of.main, files: { ...of.files, [name]: editedTree(of.files[name] ?? '', edits) } };
}
function spoiltText({ of, which, edits }: OfSource<TextEdit>): Spoilt {
  const name = fileOf(of, which);
  return { main: of.main, files: { ...of.files, [name]: editedText(of.files[name] ?? '', edits) } };
}

export const trees = anyKind({
  name: 'trees',
  batch: 50,
  cases: fc.record({ of: source, which: fc.nat(), edits: treeEdits }),
  judge: (made, reader) => readAndRun(spoiltTree(made), reader),
  show: (made) => showFiles(spoiltTree(made)),
});
/** Most are accepted: what is odd but sound has to run. */
export const mildCases = fc.record({ of: source, which: fc.nat(), edits: mildEdits });
export const mildScenario = spoiltTree;
export const mildTrees = anyKind({
  name: 'mild trees',
  batch: 50,
  cases: mildCases,
  judge: (made, reader) => readAndRun(spoiltTree(made), reader),
  show: (made) => showFiles(spoiltTree(made)),
});
export const texts = anyKind({
  name: 'texts',
  batch: 50,
  cases: fc.record({ of: source, which: fc.nat(), edits: yamlEdits }),
  judge: (made, reader) => readAndRun(spoiltText(made), reader),
  show: (made) => showFiles(spoiltText(made)),
});

/** The scenarios of the examples that name a table, and one of observed times. */
const TABLES: readonly (Spoilt & { readonly table: string })[] = [
  ...SOURCES.flatMap(({ main, files }) =>
    Object.keys(files)
      .filter((name) => name.endsWith('.csv') && (files[main] ?? '').match(/^include|build list/m) !== null)
      .map((table) => ({ main, files, table })),
  ),
  {
    main: 'observed.yaml',
    table: 'times.csv',
    files: {
      'observed.yaml': `scenario: One bench
programme: { start: 2027-03-01, quantity: 20, rate: { per day: 2 } }
sites: { works: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: build, at: bench, work: { observed: times.csv, column: minutes, unit: min } }]
`,
      'times.csv': 'unit,minutes\n1,110\n2,130\n3,95.5\n',
    },
  },
];
const cell = fc.oneof(
  hostileName,
  hostileNumber.map(String),
  fc.constantFrom('red', 'white', '2027-03-02', 'trim'),
);
/** A cell of a table by its row and column, and what stands there instead. */
const cells = fc.array(fc.record({ row: fc.nat(), column: fc.nat(), cell }), { maxLength: 4 });
const quoted = (text: string): string => (/[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

function withCells(table: string, changes: readonly { row: number; column: number; cell: string }[]): string {
  const rows = table
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  for (const { row, column, cell: text } of changes) {
    const found = rows[row % rows.length] ?? [];
    found[column % (found.length + 1)] = quoted(text);
  }
  return `${rows.map((row) => row.join(',')).join('\n')}\n`;
}

type OfTable = { of: (typeof TABLES)[number]; changes: Parameters<typeof withCells>[1]; edits: TextEdit[] };
const spoiltTable = ({ of: { main, files, table }, changes, edits }: OfTable): Spoilt => ({
  main,
  files: { ...files, [table]: editedText(withCells(files[table] ?? '', changes), edits) },
});
export const tables = anyKind({
  name: 'tables',
  batch: 50,
  cases: fc.record({
    of: fc.constantFrom(...TABLES),
    changes: cells,
    edits: fc.oneof(fc.constant<TextEdit[]>([]), csvEdits),
  }),
  judge: (made: OfTable, reader) => readAndRun(spoiltTable(made), reader),
  show: (made) => showFiles(spoiltTable(made)),
});
