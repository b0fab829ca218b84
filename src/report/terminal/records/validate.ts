import { count, exact, number } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { validateFirst } from '../../first/records/validate.js';
import {
  agreesText,
  boundsText,
  byPosition,
  isJudged,
  shownOf,
  valueText,
  whatText,
} from '../../first/records/validate-told.js';
import { firstPieces } from '../first.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';
import { IN_FILES } from './odd-rows.js';

/** So many measures are told besides those that do not agree; the files have all. */
const NEAREST = 15;

/** What the page says, then a row a measure to look at, as plain text of at most `width` columns. */
export function validateTable(results: ValidateResults, width?: number): string {
  const { sentence, period, units, replications, level, log, seed, notes } = results,
    judged = byPosition(shownOf(results).filter(isJudged)),
    out = judged.filter(({ agrees }) => !agrees),
    near = judged.slice(out.length, out.length + NEAREST),
    left = judged.length - out.length - near.length;
  return joined(
    [
      ...firstPieces(validateFirst(results), sentence),
      '',
      `${period.from} to the start of ${period.to}, ${count(period.days, 'day')}: ` +
        `${count(units.standing, 'unit')} on the floor at the start, ${exact(units.entered)} came in, ` +
        `${exact(units.shipped)} were shipped`,
      `${count(replications, 'simulated build')}, seed ${seed}; a build of the model lies between, in all ` +
        `measures together, with ${number(100 * level)} % chance`,
      ...log.told,
      ...notes,
      '',
      tableOf(
        [...out, ...near],
        [
          { head: 'at', cell: 'of' },
          { head: 'measure', cell: whatText },
          { head: 'log', align: 'right', cell: (each) => valueText(each, each.real) },
          { head: 'model', align: 'right', cell: (each) => valueText(each, each.simulated.middle) },
          { head: 'between', align: 'right', cell: boundsText },
          { head: 'agrees', cell: agreesText },
        ],
      ),
      ...(left > 0
        ? [
            '',
            `${out.length === 0 ? 'Those' : 'Those that do not agree, and those'} nearest to an end of ` +
              `their range. ${count(left, 'measure')} more ${IN_FILES}`,
          ]
        : []),
    ],
    width,
  );
}
