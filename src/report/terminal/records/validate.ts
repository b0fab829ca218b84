import { count, exact, number } from '../../../study/format.js';
import type { Compared, ValidateResults } from '../../../study/validate/results.js';
import { joined, type Piece } from '../lines.js';
import { tableOf } from '../table.js';

/** A share as per cent, anything else as it is. */
export function valueText({ topic }: Pick<Compared, 'topic'>, value: number | null): string {
  if (value === null) return '';
  const isShare = topic === 'quality' || topic === 'finds' || topic === 'people';
  return isShare ? `${number(100 * value)} %` : number(value);
}

export const boundsText = (each: Compared): string =>
  each.simulated === null
    ? ''
    : `${valueText(each, each.simulated.low)} to ${valueText(each, each.simulated.high)}`;

export const agreesText = ({ agrees }: Compared): string =>
  agrees === null ? 'not judged' : agrees ? 'yes' : 'no';

/** People are told in the words of causes: the share behind them says nothing by itself. */
export const shownOf = ({ measures }: ValidateResults): readonly Compared[] =>
  measures.filter(({ topic }) => topic !== 'people');

/** `yes: rates up to that of the log (the log agrees)` */
export const useLines = ({ uses }: ValidateResults): string[] =>
  uses.map(({ use, may, why }) => `${may === null ? 'not known' : may ? 'yes' : 'no'}: ${use} (${why})`);

/** The verdict, what explains a gap, then a row a measure, as plain text of at most `width` columns. */
export function validateTable(results: ValidateResults, width?: number): string {
  const { sentence, cause, causes, next, period, units, replications, level, log, seed, notes } = results;
  const pieces: Piece[] = [
    sentence,
    '',
    ...useLines(results),
    '',
    `Why: ${cause}`,
    ...causes
      .slice(1)
      .map(({ words, follows }) => `also: ${words}${follows ? ' (may follow from another)' : ''}`),
    `Next: ${next}`,
    '',
    `${period.from} to the start of ${period.to}, ${count(period.days, 'day')}: ` +
      `${count(units.standing, 'unit')} ` +
      `on the floor at the start, ${exact(units.entered)} came in, ${exact(units.shipped)} were shipped`,
    `${count(replications, 'simulated build')}, seed ${seed}; a build of the model lies between, in all ` +
      `measures together, with ${number(100 * level)} % chance`,
    ...log.told,
    ...notes,
    '',
    tableOf(shownOf(results), [
      { head: 'at', cell: 'of' },
      { head: 'measure', cell: 'what' },
      { head: 'log', align: 'right', cell: (each) => valueText(each, each.real) },
      { head: 'model', align: 'right', cell: (each) => valueText(each, each.simulated?.middle ?? null) },
      { head: 'between', align: 'right', cell: boundsText },
      { head: 'agrees', cell: agreesText },
    ]),
  ];
  return joined(pieces, width);
}
