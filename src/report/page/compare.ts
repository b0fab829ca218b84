import type { CompareResults } from '../../study/compare/results.js';
import { count, exact, interval, number, short, signed } from '../../study/format.js';
import { countedText } from '../../study/loads/words.js';
import { columns, type PageTable } from '../columns.js';
import { byMeasure, type MeasureCompared, togetherText } from '../compare.js';
import { compareFirst } from '../first/compare.js';
import { counted, difference, rounded, written } from '../sheets/cells.js';
import { NO_PRICES } from '../tables/costs.js';
import { noteOf, origin, type PageContent } from './page.js';

/** The page of a comparison. */
export function comparePage(results: CompareResults): PageContent {
  const { whatIfs, scenario, window, replications, whatIfsFile } = results;
  const measures = byMeasure(results),
    costs = measures.filter(({ id }) => id === 'cost'),
    dates = measures.filter(({ id }) => id === 'last unit'),
    each = count(whatIfs.length, 'what-if');
  return {
    scenario: `${scenario.name}: base and ${each}`,
    first: compareFirst(results),
    inFull: results.answer,
    findings: results.findings.length === 0 ? ['No variant came to a standstill.'] : results.findings,
    costsAndDates: [...[...dates, ...costs].flatMap(differences), ...(costs.length === 0 ? [NO_PRICES] : [])],
    assumptions: [
      ...noteOf(scenario),
      'Each what-if is the scenario with the changes named and nothing else: their cost, duration and ' +
        'permissibility are not considered.',
      'Replication r of each variant meets the same chance (common random numbers), so differences are ' +
        `paired. Intervals of values and differences: ${togetherText(results)} (Bonferroni), and with them ` +
        'all that the answer says. Measures that go up and down together make it more than that.',
      zoneNote(measures),
      window === null
        ? "Throughput is that of the whole run, in working days of the first station's site."
        : `Throughput is judged from ${window.from} to ${window.to}, the weeks in which the base is at its ` +
          `highest rate, in working days of the base${countedText(window.counting)}.`,
    ],
    facts: origin(
      results,
      [['Replications', `${exact(replications)} of each variant`]],
      [['What-ifs', whatIfsFile]],
    ),
    tables: [changes(results), ...measures.map((measure) => measureTable(measure, results))],
    more:
      'All of these numbers, and more, are in results.json, differences.csv and runs.csv beside this ' +
      'page.',
  };
}

/** From where on a difference matters, and what the verdicts say. */
function zoneNote(measures: readonly MeasureCompared[]): string {
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

function differences({ name, unit, whatIfs }: MeasureCompared): string[] {
  return whatIfs.map(
    ({ whatIf, difference, words }) =>
      `${whatIf}, ${name}: ${signed(difference)} ${unit} (${interval(difference)}), ${words}.`,
  );
}

function changes({ whatIfs }: CompareResults): PageTable {
  return {
    id: 'changes',
    title: 'What is changed',
    note: 'Paths and values as in the files.',
    head: ['what-if', 'what', 'in the base', 'in the what-if', 'path', 'note'],
    rows: whatIfs.flatMap(({ name, note, changes: changed }) =>
      changed.map(({ path, words, before, after }, i) => [
        name,
        words,
        written(before ?? 'not there'),
        written(after ?? 'taken out'),
        path,
        i === 0 ? (note ?? '') : '',
      ]),
    ),
  };
}

function measureTable(
  { id, name, unit, better, zone, base, whatIfs }: MeasureCompared,
  results: CompareResults,
): PageTable {
  return {
    id: `measure-${id.replaceAll(' ', '-')}`,
    title: `${name}, ${unit}`,
    note:
      `${better} is better; a difference matters beyond ${number(zone.amount)} ${unit}. ` +
      `Base: ${short(base)}. In brackets: ${togetherText(results)}. Pairing: the factor by which more ` +
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
