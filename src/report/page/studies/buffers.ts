import type { BufferResults, LayoutResult } from '../../../study/buffers/results.js';
import { capital, count, exact, intervalName, number } from '../../../study/format.js';
import { mostNamed, togetherText } from '../../buffers.js';
import { type Column, columns, filled, type PageTable } from '../../columns.js';
import { WITH_THEM } from '../../constraint.js';
import { buffersFirst } from '../../first/buffers.js';
import { valued } from '../../sheets/cells.js';
import { constraintFindings, constraintTables, lossesTold } from '../constraint.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { guessesTable, inputsNote, SAME_BASE, sourcesElsewhere } from '../rests.js';
import { aroundFindings, aroundTables } from './buffers-around.js';
import { casesNote, casesTables } from './buffers-cases.js';

/** The page of shared-out places. */
export function buffersPage(results: BufferResults): PageContent {
  const {
    scenario,
    answer,
    chosen,
    present,
    replications,
    freshReplications,
    constraint,
    cases: over,
  } = results;
  return {
    scenario: scenario.name,
    first: buffersFirst(results),
    losses: lossesTold(constraint, WITH_THEM),
    inFull: answer.sentence,
    findings: [
      ...constraintFindings(constraint, WITH_THEM),
      ...(over === undefined ? [...findings(results), ...aroundFindings(results)] : []),
    ],
    costsAndDates: [
      chosen.costPerDay === null || present.costPerDay === null
        ? 'Cost: the scenario gives a waiting place no price.'
        : `Floor for these places: ${number(chosen.costPerDay)} ${results.currency ?? ''} a day, ` +
          `${number(present.costPerDay)} as it is.`,
    ],
    values: [],
    assumptions: [
      ...noteOf(scenario),
      sourcesElsewhere(scenario.file),
      `Throughput is counted over ${results.over}. A replication that ends in gridlock counts as nothing ` +
        'shipped.',
      results.answer.notes.join(' ') +
        (over === undefined ? ' The confidence is that of the choice among the best few found.' : ''),
      ...(over === undefined ? [] : [casesNote(over)]),
      'Everything but the places stays as the scenario has it. The study does not know whether there is ' +
        'floor space.',
      'Only layouts as a whole were tried: a spot with fewer places may need more of them at another.',
      inputsNote(over?.eachLevel ?? results.eachLevel, freshReplications),
      SAME_BASE,
    ],
    facts: origin(results, [
      [
        'Replications',
        `${exact(replications)} builds of each layout in the search, ` +
          `${exact(freshReplications)} fresh ones after it`,
      ],
      ['Warm-up', 'as in the scenario'],
      ['Layouts tried', exact(results.layoutsTried)],
    ]),
    tables: filled([
      places(results),
      ...(over === undefined
        ? [layouts(results), curveTable(results), ...aroundTables(results)]
        : casesTables(results, over)),
      ...constraintTables(constraint, WITH_THEM),
      guessesTable(results.weakest, capital(WITH_THEM)),
    ]),
    more: 'All of these numbers, and more, are in results.json and the CSV files beside this page.',
  };
}

function findings({ selection, chosen, more, zone, level, spots }: BufferResults): string[] {
  return [
    ...(more === null || more.isSettled
      ? []
      : [
          `That the chosen layout comes within ${number(100 * zone)} % of the best is so by the means; the ` +
            'interval of what more places bring reaches beyond. More replications would settle it.',
        ]),
    selection.settled
      ? `Among the best layouts of the search with ${count(chosen.total, 'place')} the one selected is ` +
        `within ${number(100 * zone)} % of the best, with ${number(100 * level)} % confidence; of those ` +
        'that by their intervals are no further than that behind it, the layout as it is or the most even ' +
        'one is chosen.'
      : `The selection among the best layouts was not settled after ${count(selection.rounds, 'round')}; ` +
        'the best mean was taken.',
    ...selection.others
      .filter(({ standing }) => standing === 'equal')
      .map(
        (other) =>
          `Within ${number(100 * zone)} % of the chosen one: ` +
          `${spots.map(({ name }, s) => `${name} ${other.places[s] ?? 0}`).join(', ')}.`,
      ),
  ];
}

const layoutColumns = ({ spots }: BufferResults): Column<LayoutResult>[] => [
  ['Places', 'total'],
  ['Throughput', 'rate'],
  [
    'Places by spot',
    ({ places: bySpot }) => ({
      text: bySpot.join(' '),
      parts: spots.map(({ name }, s) => ({ name, value: bySpot[s] ?? null, form: 'number' })),
    }),
  ],
];

function places(results: BufferResults): PageTable {
  const { spots, best } = results;
  return {
    id: 'places',
    title: 'Places',
    note: 'Waiting places of each buffer and bank.',
    ...columns(spots, [
      ['Spot', 'name'],
      ['As it is', 'present'],
      ['Chosen', 'chosen'],
      ...(best === null ? [] : [[capital(mostNamed(results)), 'best'] as const]),
    ]),
  };
}

function layouts(results: BufferResults): PageTable {
  const { chosen, best, present, selection, unit, freshReplications, search } = results;
  return {
    id: 'layouts',
    title: 'Layouts compared',
    note:
      `${unit}, ${count(freshReplications, 'fresh replication')}; in brackets ` +
      `${togetherText(results)}; ` +
      'places in the order of the table above.',
    ...columns(
      [
        { ...chosen, standing: 'chosen' },
        ...(best === null
          ? []
          : [{ ...best, standing: search.within === null ? 'found for the budget' : 'best for the budget' }]),
        { ...present, standing: 'as it is' },
        ...selection.others,
      ],
      [['Layout', 'standing'], ...layoutColumns(results)],
    ),
  };
}

function curveTable(results: BufferResults): PageTable {
  const { curve, unit, level, replications } = results;
  return {
    id: 'curve',
    title: 'Throughput by places',
    note:
      `Best found for each number of places, ${unit}, in brackets ${intervalName(level)}; ` +
      `${count(replications, 'replication')} of the search.`,
    ...columns(curve, [
      ...layoutColumns(results),
      ['Below the best', ({ behind }) => valued(`${number(100 * behind)} %`, behind, 'share')],
    ]),
  };
}
