import { caseName, lostOf, percentOf } from '../../../study/buffers/cases/names.js';
import type { CaseLayout, CaseResult, CasesResult } from '../../../study/buffers/cases/results.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { capital, count, number } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { caseRole, casesTogether, lostText } from '../../buffers.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { type Cell, difference, valued } from '../../sheets/cells.js';

/** The chosen layout case by case, and every layout compared in every case. */
export const casesTables = (results: BufferResults, over: CasesResult): PageTable[] => [
  casesTable(results, over),
  layoutsTable(results, over),
  differencesTable(results, over),
];

/** What is assumed of cases. */
export const casesNote = ({ file, cases }: CasesResult): string =>
  `The cases are the scenario as it is and the ${count(cases.length - 1, 'what-if')} of ${file}. How ` +
  'likely each is does not count: what is looked for loses least in its weakest case. All cases meet the ' +
  'same chance.';

const share = (value: number): Cell => valued(lostText(value), value, 'share');
const points = (more: Estimate | null): Cell => (more === null ? 'chosen' : difference(percentOf(more)));

function casesTable({ unit, level, goal }: BufferResults, over: CasesResult): PageTable {
  const chosen = defined(over.layouts[0]);
  type Row = CaseResult & { readonly c: number };
  const aloneOf = ({ alone }: Row): CaseLayout => defined(over.layouts[alone]);
  return {
    id: 'cases',
    title: 'Case by case',
    note:
      `${unit}; ${count(over.replications, 'fresh replication')}; ${casesTogether(over, level)}. Lost: of ` +
      `${lostOf(over)}. Alone: the fewest places that do as well for it.`,
    ...columns<Row>(
      over.cases.map((each, c) => ({ ...each, c })),
      [
        ['Case', (each) => capital(caseName(each))],
        ['Without limits', ({ unlimited }) => valued(number(unlimited), unlimited)],
        ['Chosen', 'rate'],
        ['Lost', ({ c }) => share(defined(chosen.cases[c]).loss)],
        ...(goal.kind === 'budget'
          ? []
          : ([
              ['Asked', ({ asked }) => (asked === null ? '' : valued(number(asked), asked))],
              ['Above it', ({ aboveAsked }) => (aboveAsked === null ? '' : difference(aboveAsked))],
            ] satisfies Column<Row>[])),
        ['Places alone', (each) => valued(String(aloneOf(each).total), aloneOf(each).total, 'count')],
        ['Lost alone', (each) => share(defined(aloneOf(each).cases[each.c]).loss)],
        ['Counted over', 'over'],
      ],
    ),
  };
}

function layoutsTable({ spots }: BufferResults, over: CasesResult): PageTable {
  return {
    id: 'layouts-by-case',
    title: 'Layouts by case',
    note:
      `Lost of ${lostOf(over)}; ${count(over.replications, 'fresh replication')}; places ` +
      'in the order of the table Places. Alone: what that case would take if it were the only one.',
    ...columns(over.layouts, [
      ['Layout', (layout) => capital(caseRole(layout, over))],
      ['Places', 'total'],
      ...over.cases.map(
        (each, c): Column<CaseLayout> => [
          each.name ?? 'As it is',
          ({ cases }) => share(defined(cases[c]).loss),
        ],
      ),
      ['Mean of the cases', ({ mean }) => share(mean)],
      [
        'Places by spot',
        ({ places }) => ({
          text: places.join(' '),
          parts: spots.map(({ name }, s) => ({ name, value: places[s] ?? null, form: 'number' })),
        }),
      ],
    ]),
  };
}

function differencesTable({ level }: BufferResults, over: CasesResult): PageTable {
  return {
    id: 'layouts-more',
    title: 'What they lose more than the chosen layout',
    note:
      `Points of per cent of ${lostOf(over)}, in pairs; in brackets ` +
      `${casesTogether(over, level)}. At worst: each in its own weakest case.`,
    ...columns(over.layouts, [
      ['Layout', (layout) => capital(caseRole(layout, over))],
      ['Places', 'total'],
      ['Weakest case', ({ weakest }) => capital(caseName(defined(over.cases[weakest])))],
      ['Or perhaps', ({ orElse }) => orElse.map((c) => caseName(defined(over.cases[c]))).join(', ')],
      ['At worst', ({ worstMore }) => points(worstMore)],
      ['Mean of the cases', ({ meanMore }) => points(meanMore)],
      ...over.cases.map(
        (each, c): Column<CaseLayout> => [
          each.name ?? 'As it is',
          ({ cases }) => points(defined(cases[c]).more),
        ],
      ),
    ]),
  };
}
