import { count, exact, number } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { validateFirst } from '../../first/records/validate.js';
import { agreesText, boundsText, shownOf, valueText, whatText } from '../../first/records/validate-told.js';
import { firstPieces } from '../first.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';

/** What the page says, then a row a measure, as plain text of at most `width` columns. */
export function validateTable(results: ValidateResults, width?: number): string {
  const { sentence, period, units, replications, level, log, seed, notes } = results;
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
      tableOf(shownOf(results), [
        { head: 'at', cell: 'of' },
        { head: 'measure', cell: whatText },
        { head: 'log', align: 'right', cell: (each) => valueText(each, each.real) },
        { head: 'model', align: 'right', cell: (each) => valueText(each, each.simulated?.middle ?? null) },
        { head: 'between', align: 'right', cell: boundsText },
        { head: 'agrees', cell: agreesText },
      ]),
    ],
    width,
  );
}
