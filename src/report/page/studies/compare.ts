import type { Change } from '../../../scenario/changes/edit.js';
import type { CompareResults, MeasureResult, ZoneResult } from '../../../study/compare/results.js';
import { capital, count, exact, interval, mean, number, short } from '../../../study/format.js';
import { countedText } from '../../../study/loads/words.js';
import { negated } from '../../../study/statistics/estimate.js';
import { columns, filled, type PageTable } from '../../columns.js';
import { byMeasure, type MeasureCompared, togetherText } from '../../compare.js';
import { triedWith } from '../../constraint.js';
import { compareFirst } from '../../first/compare.js';
import { type Cell, counted, difference, rounded, written } from '../../sheets/cells.js';
import { NO_PRICES } from '../../tables/costs.js';
import { constraintFindings, constraintTables, lossesTold } from '../constraint.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { guessesTable, inputsNote, SAME_BASE, sourcesElsewhere } from '../rests.js';

/** The page of a comparison. */
export function comparePage(results: CompareResults): PageContent {
  const { whatIfs, scenario, window, replications, whatIfsFile, constraint } = results;
  const at = triedWith(results),
    measures = byMeasure(results),
    costs = measures.filter(({ id }) => id === 'cost'),
    dates = measures.filter(({ id }) => id === 'last unit'),
    each = count(whatIfs.length, 'what-if');
  return {
    scenario: `${scenario.name}: base and ${each}`,
    first: compareFirst(results),
    losses: lossesTold(constraint, at),
    inFull: results.answer,
    findings: [
      ...constraintFindings(constraint, at),
      ...(results.findings.length === 0 ? ['No variant came to a standstill.'] : results.findings),
    ],
    costsAndDates: [...[...dates, ...costs].flatMap(differences), ...(costs.length === 0 ? [NO_PRICES] : [])],
    values: [],
    assumptions: [
      ...noteOf(scenario),
      sourcesElsewhere(scenario.file),
      'Each what-if is the scenario with the changes named and nothing else: their cost, duration and ' +
        'permissibility are not considered. So “better” on the cost of a unit is before the price of the ' +
        'change.',
      inputsNote(results.differenceLevel, replications),
      'Build r of each plan meets the same chance (common random numbers), so differences are ' +
        `paired. Intervals of values and differences: ${togetherText(results)} (Bonferroni), and with them ` +
        'all that the answer says. Measures that go up and down together make it more than that.',
      zoneNote(measures),
      windowNote(window),
      SAME_BASE,
    ],
    facts: origin(
      results,
      [
        ['Replications', `${exact(replications)} builds of each plan`],
        ['Warm-up', 'as in the scenario'],
      ],
      [['What-ifs', whatIfsFile]],
    ),
    tables: filled([
      changes(results),
      ...measures.map((measure) => measureTable(measure, results)),
      ...constraintTables(constraint, at),
      guessesTable(results.weakest, 'The scenario as it is'),
    ]),
    more:
      'All of these numbers, and more, are in results.json, differences.csv and runs.csv beside this ' +
      'page.',
  };
}

/** Over which weeks the throughput is taken. */
export const windowNote = (window: CompareResults['window']): string =>
  window === null
    ? "Throughput is that of the whole run, in working days of the first station's site."
    : `Throughput is judged from ${window.from} to ${window.to}, the weeks in which the base is at its ` +
      `highest rate, in working days of the base${countedText(window.counting)}.`;

/** From where on a difference matters, and what the verdicts say. */
export function zoneNote(measures: readonly (MeasureResult & { readonly zone: ZoneResult })[]): string {
  const beyond = measures.map(
    ({ name, unit, zone: { share, amount } }) =>
      `${name} ${number(amount)} ${unit} (${number(100 * share)} % of the base)`,
  );
  return (
    `A difference matters beyond: ${beyond.join('; ')}. Better and worse are so by more than that, with ` +
    'the whole interval; at least a little better: more than nothing, but perhaps not by what matters; no ' +
    'difference that matters: the whole interval lies within it; not settled: more replications are needed.'
  );
}

const DIRECTIONS: Readonly<Record<string, readonly [less: string, more: string]>> = {
  'last unit': ['sooner', 'later'],
  cost: ['less', 'more'],
};

/** `With a second booth: last unit out 14 days sooner (..), better.` */
export function differences({ id, name, unit, whatIfs }: MeasureCompared): string[] {
  const [less, more] = DIRECTIONS[id] ?? ['less', 'more'];
  return whatIfs.map(({ whatIf, difference, words }) => {
    const isLess = difference.mean < 0,
      size = isLess ? negated(difference) : difference;
    return (
      `${capital(whatIf)}, ${name}: ${mean(size)} ${unit} ${isLess ? less : more} (${interval(size)}), ` +
      `${words}${id === 'cost' ? ', before what the change itself costs' : ''}.`
    );
  });
}

const changes = ({ whatIfs }: CompareResults): PageTable => ({
  id: 'changes',
  title: 'What is changed',
  note: 'Paths and values as in the files.',
  head: ['what-if', 'what', 'in the base', 'in the what-if', 'path', 'note'],
  rows: whatIfs.flatMap(({ name, note, changes: changed }) =>
    changeRows(changed).map((row, i) => [name, ...row, i === 0 ? (note ?? '') : '']),
  ),
});

/** What is changed, in the base, in the changed scenario, and its path. */
export const changeRows = (changes: readonly Change[]): Cell[][] =>
  changes.map(({ path, words, before, after }) => [
    words,
    written(before ?? 'not there'),
    written(after ?? 'taken out'),
    path,
  ]);

function measureTable(
  { id, name, unit, better, zone, base, whatIfs }: MeasureCompared,
  results: CompareResults,
): PageTable {
  return {
    id: `measure-${id.replaceAll(' ', '-')}`,
    title: `${name}, ${unit}`,
    note:
      `${better} is better; a difference matters beyond ${number(zone.amount)} ${unit}. ` +
      `Base: ${short(base)}. In brackets: ${togetherText(results)}. ` +
      (id === 'cost' ? 'What a change itself costs is not in it. ' : '') +
      'Pairing: the factor by which more ' +
      'replications would be needed without common random numbers.',
    ...columns(whatIfs, [
      ['what-if', 'whatIf'],
      ['value', 'value'],
      ['difference to the base', ({ difference: each }) => difference(each)],
      ['pairs', ({ difference: { n } }) => counted(n)],
      ['verdict', 'words'],
      ['pairing', ({ pairingGain }) => (pairingGain === null ? '-' : rounded(pairingGain))],
    ]),
  };
}
