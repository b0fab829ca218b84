import { Unreadable } from '../unreadable.js';

/** Columns of the log of events. */
export const EVENT_COLUMNS = [
  'at',
  'event',
  'object',
  'type',
  'step',
  'station',
  'others',
  'values',
] as const;
const STAY_COLUMNS = ['unit', 'step', 'station', 'arrived', 'started', 'ended'] as const;
type Column = (typeof EVENT_COLUMNS)[number] | (typeof STAY_COLUMNS)[number];

/** What the head of a log says: which form it has, and where each column is; -1: it is not there. */
export interface Columns {
  readonly form: 'events' | 'stays';
  readonly at: Readonly<Record<Column, number>>;
  /** As in the file; they are not read. */
  readonly ignored: readonly string[];
  /** A row must have at least so many cells. */
  readonly needed: number;
}

/** @throws Unreadable where a needed column is missing or there twice */
export function columnsOf(head: readonly string[]): Columns {
  const names = head.map((name) => name.trim().toLowerCase()),
    find = (...any: string[]): number => names.findIndex((name) => any.includes(name));
  const all: readonly Column[] = [...EVENT_COLUMNS, ...STAY_COLUMNS];
  for (const column of all)
    if (names.filter((name) => name === column).length > 1)
      throw new Unreadable(
        `line 1: expected one column ${column}, got two`,
        'rename or take out one of them',
      );
  const isEvents = find('event') >= 0,
    at = Object.fromEntries(all.map((column) => [column, find(column)])) as Record<Column, number>;
  at.object = at.unit = find('object', 'unit');
  const needed: Column[] = isEvents
      ? ['at', 'event', 'object', 'step']
      : ['unit', 'step', 'started', 'ended'],
    missing = needed.filter((column) => at[column] < 0);
  if (missing.length > 0)
    throw new Unreadable(
      `line 1: expected the columns ${needed.join(', ')}, got ${head.join(', ')}`,
      `add ${missing.length === 1 ? 'the column' : 'the columns'} ${missing.join(', ')}; a log has a row ` +
        'an event (at, event, object, step) or a row a stay (unit, step, started, ended)',
    );
  const read: readonly string[] = isEvents ? [...EVENT_COLUMNS, 'unit'] : STAY_COLUMNS;
  return {
    form: isEvents ? 'events' : 'stays',
    at,
    ignored: head.filter((_, i) => !read.includes(names[i] ?? '')),
    needed: 1 + Math.max(...needed.map((column) => at[column])),
  };
}

/** Whether a table with this head is a floor log: all that one of its forms needs is there. */
export function isLogHead(head: readonly string[]): boolean {
  const names = new Set(head.map((name) => name.trim().toLowerCase())),
    has = (...all: string[]): boolean => all.every((name) => names.has(name));
  return (has('object') || has('unit')) && (has('at', 'event') || has('step', 'started', 'ended'));
}
