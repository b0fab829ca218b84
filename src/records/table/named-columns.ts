import { nearest } from '../../scenario/values/nearest.js';
import { Unreadable } from '../unreadable.js';

/** What the planner calls the columns of a table of times; of those left out the usual name is looked for. */
export interface TimeColumns {
  readonly step?: string | undefined;
  readonly minutes?: string | undefined;
  readonly date?: string | undefined;
  readonly unit?: string | undefined;
  /** Columns of options. */
  readonly by?: readonly string[] | undefined;
}

/** Where they are, from 0; -1: a table without one. */
export interface ColumnsFound {
  readonly step: number;
  readonly minutes: number;
  readonly date: number;
  readonly unit: number;
  readonly by: Readonly<Record<string, number>>;
}

/**
 * Finds columns of a table by name. Each throws Unreadable where a column is missing or there twice, with the
 * one that may be meant.
 */
export interface ColumnFinder {
  /** The number of the column, from 0. @param option of the command line that names it */
  readonly find: (name: string, option: string) => number;
  /** The same of one that need not be there, unless it was named: -1. */
  readonly perhaps: (name: string | undefined, usual: string, option: string) => number;
  /** Columns of options by name. */
  readonly by: (names: readonly string[] | undefined) => Readonly<Record<string, number>>;
}

export function columnFinder(head: readonly string[]): ColumnFinder {
  const plain = (name: string): string => name.trim().toLowerCase(),
    names = head.map(plain);
  const find = (name: string, option: string): number => {
    const at = names.indexOf(plain(name));
    if (at < 0) {
      const near = nearest(plain(name), names),
        meant = near === undefined ? undefined : head[names.indexOf(near)];
      throw new Unreadable(
        `line 1: expected a column ${name}, got ${head.join(', ')}` +
          (meant === undefined ? '' : `; did you mean "${meant}"?`),
        `name the column, for example ${option} ${JSON.stringify(meant ?? head.at(-1) ?? name)}`,
      );
    }
    if (names.includes(plain(name), at + 1))
      throw new Unreadable(`line 1: expected one column ${name}, got two`, 'rename or take out one of them');
    return at;
  };
  return {
    find,
    perhaps: (name, usual, option) =>
      name === undefined && !names.includes(usual) ? -1 : find(name ?? usual, option),
    by: (options = []) => Object.fromEntries(options.map((name) => [name, find(name, '--by')])),
  };
}

/** @throws Unreadable as a ColumnFinder does */
export function timeColumns(head: readonly string[], asked: TimeColumns): ColumnsFound {
  const { find, perhaps, by } = columnFinder(head);
  return {
    step: find(asked.step ?? 'step', '--step'),
    minutes: find(asked.minutes ?? 'minutes', '--minutes'),
    date: perhaps(asked.date, 'date', '--date'),
    unit: perhaps(asked.unit, 'unit', '--unit'),
    by: by(asked.by),
  };
}
