import type { EffectResult, FactorsResults } from '../../../study/factors/results.js';
import { designSentence } from '../../../study/factors/sentence.js';
import { count, exact, number, short } from '../../../study/format.js';
import { columns, filled, type PageTable } from '../../columns.js';
import { measureName } from '../../compare.js';
import {
  byMeasureOf,
  type MeasureByFactors,
  onlyTold,
  togetherFactors,
  togetherWords,
  triedOn,
} from '../../factors.js';
import { factorsFirst } from '../../first/factors.js';
import { counted, difference, estimated, rounded, written } from '../../sheets/cells.js';
import { NO_PRICES } from '../../tables/costs.js';
import { constraintFindings, constraintTables, lossesTold } from '../constraint.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { guessesTable, inputsNote, SAME_BASE, sourcesElsewhere } from '../rests.js';
import { changeRows, differences, windowNote, zoneNote } from './compare.js';

/** The page of an experiment. */
export function factorsPage(results: FactorsResults): PageContent {
  const { scenario, factors, window, replications, factorsFile, eachLevel, design, constraint } = results,
    at = triedOn(results),
    measures = byMeasureOf(results),
    some = (id: string) => measures.filter((measure) => measure.id === id);
  return {
    scenario: `${scenario.name}: ${count(factors.length, 'factor')}`,
    first: factorsFirst(results),
    losses: lossesTold(constraint, at),
    inFull: results.answer,
    findings: [
      ...constraintFindings(constraint, at),
      ...(results.findings.length === 0 ? ['No combination came to a standstill.'] : results.findings),
    ],
    costsAndDates: [
      ...[...some('last unit'), ...some('cost')].flatMap((measure) =>
        differences(onlyTold(measure, results)),
      ),
      ...(some('cost').length === 0 ? [NO_PRICES] : []),
    ],
    values: [],
    assumptions: [
      ...noteOf(scenario),
      sourcesElsewhere(scenario.file),
      `${designSentence(results)}${design.resolution === null ? '' : ` ${PUBLISHED}`}`,
      'Each combination is the scenario with the levels named and nothing else: what that costs to ' +
        'make, how ' +
        'long it takes and whether it may be made are not considered.',
      inputsNote(eachLevel, replications),
      'Build r of each combination meets the same chance (common random numbers), and each effect ' +
        'is worked ' +
        `out within it. Intervals: ${togetherFactors(results)} (Bonferroni), and with them all ` +
        `that the answer ` +
        'says.',
      zoneNote(measures),
      windowNote(window),
      SAME_BASE,
    ],
    facts: origin(
      results,
      [
        ['Replications', `${exact(replications)} builds of each combination`],
        ['Warm-up', 'as in the scenario'],
      ],
      [['Factors', factorsFile]],
    ),
    tables: filled([
      factorTable(results),
      designTable(results),
      ...measures.flatMap((measure) => [effectTable(measure, results), combinationTable(measure, results)]),
      ...constraintTables(constraint, at),
      guessesTable(results.weakest, 'The scenario as it is'),
    ]),
    more: 'All of these numbers, and more, are in results.json and the CSV files beside this page.',
  };
}

const PUBLISHED =
  'The part is a published one (Box, Hunter & Hunter 2005, Statistics for Experimenters, table 6.22; ' +
  'NIST/SEMATECH e-Handbook of Statistical Methods, sec. 5.3.3.4.7; from memory).';

const factorTable = ({ factors }: FactorsResults): PageTable => ({
  id: 'factors',
  title: 'Factors and their levels',
  note: 'Paths and values as in the files. A level without a change leaves the scenario as it is.',
  head: ['factor', 'level', 'what', 'in the scenario', 'at this level', 'path', 'note'],
  rows: factors.flatMap(({ letter, name, note, levels }) =>
    levels.flatMap((level, l) => {
      const rows = changeRows(level.changes);
      return (rows.length === 0 ? [['nothing', '', '', '']] : rows).map((row, i) => [
        `${letter}: ${name}`,
        written(level.name),
        ...row,
        l === 0 && i === 0 ? (note ?? '') : '',
      ]);
    }),
  ),
});

/** Of a part of the combinations: what is seen as one. */
const designTable = ({ design, factors }: FactorsResults): PageTable => ({
  id: 'design',
  title: 'What is seen as one',
  note:
    `${exact(design.run)} of ${count(design.of, 'combination')}, ${design.notation} of resolution ` +
    `${design.resolution ?? ''}: ${design.generators.join(', ')}, so ${design.defining}. Letters: ` +
    `${factors.map(({ letter, name }) => `${letter} ${name}`).join(', ')}. Two or more letters are ` +
    `what these ` +
    'do together.',
  head: ['seen as one', 'of three and more together'],
  rows: design.confounded.map((string) => {
    const words = string.split(' + '),
      isShort = (word: string): boolean => word.length <= 2;
    return [words.filter(isShort).join(' + '), words.filter((word) => !isShort(word)).join(', ')];
  }),
});

const idOf = (what: string, { id }: MeasureByFactors): string => `${what}-${id.replaceAll(' ', '-')}`;

function effectTable(measure: MeasureByFactors, results: FactorsResults): PageTable {
  const { unit, better, zone, base, effects } = measure,
    hasMixed = effects.some(({ effect: { mixedWith } }) => mixedWith.length > 0);
  return {
    id: idOf('effects', measure),
    title: `Effects on ${measureName(measure)}, ${unit}`,
    note:
      `${better} is better; a difference matters beyond ${number(zone.amount)} ${unit}. As it is: ` +
      `${short(base)}. By itself: from the first level to the second, on average over the levels of all ` +
      'others. Together: what two bring beyond the sum of each. In brackets: ' +
      `${togetherFactors(results)}. Pairing: the factor by which more replications would be needed without ` +
      'common random numbers.',
    ...columns(effects, [
      ['effect', ({ effect }) => effect.name],
      ['', ({ effect }) => kindOf(effect)],
      ['difference', ({ difference: seen }) => difference(seen)],
      ['replications', ({ difference: { n } }) => counted(n)],
      ['verdict', ({ effect, words }) => (effect.kind === 'alone' ? words : togetherWords(words))],
      ...(hasMixed
        ? [['not told from', (each: (typeof effects)[number]) => each.effect.mixedWith.join(', ')] as const]
        : []),
      ['pairing', ({ pairingGain }) => (pairingGain === null ? '-' : rounded(pairingGain))],
    ]),
  };
}

const kindOf = ({ kind }: EffectResult): string => (kind === 'alone' ? 'by itself' : 'together');

function combinationTable(measure: MeasureByFactors, results: FactorsResults): PageTable {
  const { unit, combinations } = measure,
    { factors, best } = results;
  return {
    id: idOf('combinations', measure),
    title: `Combinations: ${measureName(measure)}, ${unit}`,
    note: `In brackets: ${togetherFactors(results)}.`,
    head: [
      ...factors.map((factor) => factor.name),
      'value',
      'difference to as it is',
      'verdict',
      ...(measure.id === 'throughput' ? ['ships the most'] : []),
    ],
    rows: combinations.map(({ combination, ...each }, c) => [
      ...factors.map(({ levels }, f) => written(levels[combination.levels[f] ?? 0]?.name ?? '')),
      estimated(each.value),
      combination.isBase ? 'as it is' : difference(each.difference),
      combination.isBase ? '' : each.words,
      ...(measure.id === 'throughput'
        ? [c === best.combination ? 'yes' : best.notBehind.includes(c) ? 'perhaps' : 'no']
        : []),
    ]),
  };
}
