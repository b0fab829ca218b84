import type { FactorsResults } from '../../study/factors/results.js';
import { bounds, count, mean, number, signed } from '../../study/format.js';
import { measureName } from '../compare.js';
import { byMeasureOf, isMixed, type MeasureByFactors, togetherWords, triedOn } from '../factors.js';
import { factorsFirst } from '../first/factors.js';
import { constraintLines } from './constraint.js';
import { BETWEEN_ALL, firstPieces, plainly } from './first.js';
import { joined } from './lines.js';
import { table, tableOf } from './table.js';

/** The experiment in short: the answer, the effects on each measure, and each combination. */
export function factorsTable(results: FactorsResults, width?: number): string {
  const measures = byMeasureOf(results),
    { design, factors, replications, seed, level, constraint } = results;
  return joined(
    [
      ...firstPieces(factorsFirst(results), results.answer),
      `${count(replications, 'build')} of each combination, seed ${seed}, the same chance in all`,
      `between: all effects and differences hold together, ${number(100 * level)} %`,
      ...(design.resolution === null
        ? []
        : [
            `design: ${design.notation}, resolution ${design.resolution}, ${design.generators.join(', ')}; ` +
              factors.map(({ letter, name }) => `${letter} ${name}`).join(', '),
            `seen as one: ${design.confounded.join('; ')}`,
          ]),
      '',
      tableOf(measures, [
        { head: 'today', cell: ({ id, name, unit }) => `${measureName({ id, name })}, ${unit}` },
        { head: 'mean', align: 'right', cell: ({ base }) => mean(base) },
        { head: BETWEEN_ALL, cell: ({ base }) => bounds(base) },
        { head: 'matters beyond', align: 'right', cell: ({ zone }) => number(zone.amount) },
      ]),
      '',
      table(measures.flatMap(effectRows), [
        { head: 'effect' },
        { head: 'difference', align: 'right' },
        { head: BETWEEN_ALL },
        { head: 'verdict' },
      ]),
      ...(results.effects.some(isMixed) ? ['* or what two others do together: see above'] : []),
      '',
      ...measures.slice(0, 1).map((main) => combinationTable(main, results)),
      ...(constraint === null ? [] : constraintLines(constraint, triedOn(results))),
      ...results.findings.flatMap((text) => ['', `finding: ${plainly(text)}`]),
    ],
    width,
  );
}

const effectRows = ({ id, name, unit, effects }: MeasureByFactors): string[][] => [
  [`${measureName({ id, name })}, ${unit}`, '', '', ''],
  ...effects.map(({ effect, difference, words }) => [
    `  ${effect.name}${isMixed(effect) ? ' *' : ''}`,
    signed(difference),
    bounds(difference),
    effect.kind === 'alone' ? words : togetherWords(words),
  ]),
];

function combinationTable(
  { name, unit, combinations }: MeasureByFactors,
  { factors, best }: FactorsResults,
): (width: number) => string {
  const rows = [...combinations.entries()].map(([c, { combination, value, difference, verdict }]) => [
    ...factors.map(({ levels }, f) => levels[combination.levels[f] ?? 0]?.name ?? ''),
    mean(value),
    bounds(value),
    combination.isBase ? 'today' : signed(difference),
    combination.isBase ? '' : verdict,
    c === best.combination ? 'most' : best.notBehind.includes(c) ? 'perhaps as much' : '',
  ]);
  return table(rows, [
    ...factors.map((factor) => ({ head: factor.name })),
    { head: `${name}, ${unit}`, align: 'right' },
    { head: BETWEEN_ALL },
    { head: 'to today', align: 'right' },
    { head: 'verdict' },
    { head: '' },
  ]);
}
