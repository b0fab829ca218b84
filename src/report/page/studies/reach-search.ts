import { count, exact, number } from '../../../study/format.js';
import type { ReachResults } from '../../../study/reach/results.js';
import { isPriced, setText, undecided } from '../../../study/reach/sentence.js';
import { columns, type PageTable } from '../../columns.js';
import { setOrAsIs } from '../../first/reach/told.js';
import { amount } from './reach-steps.js';

/** How the set was looked for, in a clause. */
export function searchText(results: ReachResults): string {
  const { search, possible } = results,
    { sets, byArithmetic, hurts, replications } = search;
  return [
    `${count(sets, 'set')} of ${count(possible.length, 'change')} were run` +
      `${byArithmetic === 0 ? '' : `, ${exact(byArithmetic)} more ruled out by arithmetic`}; ` +
      `${count(replications, 'replication')} in all`,
    ...howFar(results),
    ...(hurts.length === 0 ? [] : [`${count(hurts.length, 'pair')} of sets show a change that does harm`]),
  ].join('; ');
}

/** Whether all that had to be looked at was. */
function howFar(results: ReachResults): string[] {
  const { search, outcome } = results,
    open = undecided(results).length,
    those = outcome === 'not reached' ? 'set' : isPriced(results) ? 'cheaper set' : 'set of fewer changes';
  if (outcome === 'holds already' || outcome === 'not settled') return [];
  if (!search.isProven) return [`the search was ended before every ${those} was looked at`];
  return [
    `every ${those} ${open === 0 ? '' : `but ${exact(open)} that could not be settled `}falls short: ` +
      'it was run, or is part of one that falls short, as a change is taken to do no harm',
  ];
}

/** The last few, decided one after the other by fresh replications. */
export function decidedTable(results: ReachResults): PageTable {
  const { search, currency } = results,
    { finalists, level, zone } = search;
  return {
    id: 'decided',
    title: 'Sets decided by fresh replications',
    note:
      'In the order in which they were decided, the cheapest first, by replications that had no part in ' +
      `the search. All of them are told rightly with ${number(100 * level)} %, but for a difference below ` +
      `${number(100 * zone)} % of what is asked, which does not matter. One that does enough was judged ` +
      'once more as a whole, by other replications again.',
    ...columns(finalists, [
      ['Set', ({ made }) => setOrAsIs(made)],
      ...(isPriced(results)
        ? [[`Money, ${currency}`, (each: { money: number }) => amount(each.money)] as const]
        : []),
      [
        'Found',
        ({ side }) => (side === 'above' ? 'does enough' : side === 'below' ? 'falls short' : 'not settled'),
      ],
      ['Replications', 'replications'],
    ]),
  };
}

/** Pairs of sets of which the larger one surely did less. */
export function harmTable({ search: { hurts } }: ReachResults): PageTable {
  const named = (names: readonly string[]): string =>
    names.length === 0 ? 'as it is' : setText(names.map((name) => ({ name, times: 1 })));
  return {
    id: 'harm',
    title: 'Changes that do harm',
    note: 'Pairs of sets that were run of which the larger one surely did less, by more than the zone.',
    ...columns(hurts, [
      ['Larger set', (pair) => named(pair.with)],
      ['Does less than', (pair) => named(pair.without)],
    ]),
  };
}
