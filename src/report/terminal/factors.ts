import type { FactorsResults } from '../../study/factors/results.js';
import { bounds, count, intervalName, mean, number, signed } from '../../study/format.js';
import { byMeasureOf, isMixed, type MeasureByFactors, togetherFactors, togetherWords } from '../factors.js';
import { joined } from './lines.js';
import { table, tableOf } from './table.js';

/** The experiment in short: the answer, the effects on each measure, and each combination. */
export function factorsTable(results: FactorsResults, width?: number): string {
  const measures = byMeasureOf(results),
    ci = intervalName(results.eachLevel),
    { design, factors } = results;
  return joined(
    [
      results.answer,
      `${count(results.replications, 'replication')} of each, seed ${results.seed}, the same chance in all`,
      `intervals: ${togetherFactors(results)}`,
      ...(design.resolution === null
        ? []
        : [
            `design: ${design.notation}, resolution ${design.resolution}, ${design.generators.join(', ')}; ` +
              factors.map(({ letter, name }) => `${letter} ${name}`).join(', '),
            `seen as one: ${design.confounded.join('; ')}`,
          ]),
      '',
      tableOf(measures, [
        { head: 'as it is', cell: ({ name, unit }) => `${name}, ${unit}` },
        { head: 'mean', align: 'right', cell: ({ base }) => mean(base) },
        { head: ci, cell: ({ base }) => bounds(base) },
        { head: 'matters beyond', align: 'right', cell: ({ zone }) => number(zone.amount) },
      ]),
      '',
      table(measures.flatMap(effectRows), [
        { head: 'effect' },
        { head: 'difference', align: 'right' },
        { head: ci },
        { head: 'verdict' },
      ]),
      ...(results.effects.some(isMixed) ? ['* or what two others do together: see above'] : []),
      '',
      ...measures.slice(0, 1).map((main) => combinationTable(main, results)),
      ...results.findings.flatMap((text) => ['', `finding: ${text}`]),
    ],
    width,
  );
}

const effectRows = ({ name, unit, effects }: MeasureByFactors): string[][] => [
  [`${name}, ${unit}`, '', '', ''],
  ...effects.map(({ effect, difference, words }) => [
    `  ${effect.name}${isMixed(effect) ? ' *' : ''}`,
    signed(difference),
    bounds(difference),
    effect.kind === 'alone' ? words : togetherWords(words),
  ]),
];

function combinationTable(
  { name, unit, combinations }: MeasureByFactors,
  { factors, eachLevel, best }: FactorsResults,
): (width: number) => string {
  const rows = [...combinations.entries()].map(([c, { combination, value, difference, verdict }]) => [
    ...factors.map(({ levels }, f) => levels[combination.levels[f] ?? 0]?.name ?? ''),
    mean(value),
    bounds(value),
    combination.isBase ? 'as it is' : signed(difference),
    combination.isBase ? '' : verdict,
    c === best.combination ? 'most' : best.notBehind.includes(c) ? 'perhaps as much' : '',
  ]);
  return table(rows, [
    ...factors.map((factor) => ({ head: factor.name })),
    { head: `${name}, ${unit}`, align: 'right' },
    { head: intervalName(eachLevel) },
    { head: 'to as it is', align: 'right' },
    { head: 'verdict' },
    { head: '' },
  ]);
}
