import type { Basis, Measured } from '../../scenario/types/scenario.js';
import { count, exact } from '../../study/format.js';
import type { AssumptionResult, Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { written } from '../sheets/cells.js';

/** Rows on the page; the rest is in results.json. */
export const MOST_ROWS = 200;

/** `assumptions: 2 measured, 14 estimated, 3 guessed`; nothing where the scenario says nothing. */
export function assumptionLine(said: readonly { readonly basis: Basis }[]): string[] {
  return said.length === 0 ? [] : [`assumptions: ${counts(said)}`];
}

export function counts(said: readonly { readonly basis: Basis }[]): string {
  const of = (basis: Basis): number => said.filter((each) => each.basis === basis).length;
  return `${of('measured')} measured, ${of('estimate')} estimated, ${of('guess')} guessed`;
}

/** Guesses first, since they are to be looked at first; else as in the file. */
export function assumptions({ assumptions: said }: Pick<Results, 'assumptions'>): PageTable {
  const rank = { guess: 0, estimate: 1, measured: 2 } as const;
  const sorted = [...said].sort((a, b) => rank[a.basis] - rank[b.basis]);
  const more =
    sorted.length > MOST_ROWS
      ? ` The first ${MOST_ROWS} of ${count(sorted.length, 'value')}; all are in results.json.`
      : '';
  return {
    id: 'assumptions',
    title: 'Assumptions',
    note: `Values of which the scenario says where they come from: ${counts(said)}; guesses first.${more}`,
    ...columns(sorted.slice(0, MOST_ROWS), [
      ['What', 'words'],
      ['Value', ({ value }) => written(value)],
      ['Basis', 'basis'],
      ...(said.some(({ measured }) => measured !== undefined)
        ? [['Behind it', ({ measured }: AssumptionResult) => behindIt(measured)] as const]
        : []),
      ['Note', 'note'],
      ['In the file', 'path'],
    ]),
  };
}

/** What stands behind a measured value: `84 values, 2027-08-16 to 2027-10-29, times.csv`; '' for not said. */
export function behindIt(measured: Measured | undefined): string {
  if (measured === undefined) return '';
  const { n, found, from, to, file } = measured,
    when = [from && (to === undefined ? `from ${from}` : from), to && `to ${to}`]
      .filter((part) => part !== undefined)
      .join(' ');
  return [found === undefined ? count(n, 'value') : `${exact(found)} of ${exact(n)}`, when, file ?? '']
    .filter((part) => part !== '')
    .join(', ');
}
