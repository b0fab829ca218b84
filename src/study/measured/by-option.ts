import { LEVEL } from '../asked.js';
import { type CountRow, type FitOfChance, fitChance } from '../chances/chance.js';
import { count } from '../format.js';
import { sumOf } from '../statistics/sums.js';
import { type LookCounts, unitsIn } from './counts.js';

/**
 * Units that came to the first inspection, found there or at a later one, by option; null where none came.
 * Where more came to a later inspection they are other units, and do not count.
 * @param looked so many chances are asked about: one depends on an option only where that is sure allowing
 *   for all of them (Bonferroni)
 */
export function foundByOption(
  looks: readonly LookCounts[],
  looked: number,
): { readonly found: FitOfChance; readonly told: readonly string[] } | null {
  const [first, ...later] = looks.filter(({ rows }) => unitsIn(rows) > 0);
  if (first === undefined) return null;
  const rest = later.filter(({ rows }) => unitsIn(rows) <= unitsIn(first.rows)),
    laterOf = ({ options }: CountRow): number =>
      sumOf(
        rest,
        ({ rows }) => rows.find((row) => JSON.stringify(row.options) === JSON.stringify(options))?.found ?? 0,
      ),
    rows = first.rows.map((row) => ({ ...row, found: Math.min(row.units, row.found + laterOf(row)) })),
    found = fitChance(rows, LEVEL),
    isSure = looked <= 1 || fitChance(rows, 1 - (1 - LEVEL) / looked).by !== null,
    [least] = found.options,
    names = found.options.map(({ option }) => option).join(', ');
  if (least === undefined) return { found, told: [] };
  if (found.by === null) return { found, told: [`No difference by ${names} is seen.`] };
  return isSure
    ? { found, told: found.told.slice(1) }
    : {
        found: { ...found, by: null },
        told: [
          `It differs by ${found.by.option} (p ${Number(found.by.adjusted.toPrecision(2))}), but of ` +
            `${count(looked, 'chance')} looked at one or another does so by chance: one for all units.`,
        ],
      };
}
