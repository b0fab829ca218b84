import { bounds, exact, number, short, signed } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';

/** How a spreadsheet shows a value: `count` without decimals, `share` holds 0 to 1, `day` an ISO date. */
export type Form = 'number' | 'count' | 'share' | 'money' | 'day';

/** A value of a cell, which has a column of its own in a spreadsheet; null stays empty there. */
export interface Part {
  /** Stands behind the head of the column; '' is the value itself. */
  readonly name: string;
  readonly value: number | string | null;
  readonly form: Form;
}

/** Values, with the text that a page shows for them. */
export interface Valued {
  readonly text: string;
  readonly parts: readonly Part[];
}

/** A cell of a table: words, or values with their text. */
export type Cell = string | Valued;

/** What a page shows. */
export const textOf = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

/** One value with its text. */
export const valued = (text: string, value: number | null, form: Form = 'number'): Valued => ({
  text,
  parts: [{ name: '', value, form }],
});

/** A bare number in three significant digits. */
export const rounded = (value: number): Valued => valued(number(value), value);

/** A number with all its digits. */
export const counted = (value: number): Valued => valued(exact(value), value);

/** A value as a scenario has it, `6` or `25 min`: what is a number and nothing else is one. */
export const written = (text: string): Cell =>
  String(Number(text)) === text ? valued(text, Number(text)) : text;

/** `3.4 (3.3 to 3.5)`, both as they are times `scale`. */
export function estimated(estimate: Estimate, scale = 1): Valued {
  return { text: short(estimate, scale), parts: estimateParts(estimate, 'number', scale) };
}

/** `+0.31 (0.28 to 0.34)` */
export const difference = (estimate: Estimate): Valued => ({
  text: `${signed(estimate)} (${bounds(estimate)})`,
  parts: estimateParts(estimate),
});

/** An amount of money with its interval. */
export const money = (estimate: Estimate): Valued => ({
  text: short(estimate),
  parts: estimateParts(estimate, 'money'),
});

/** A share: in per cent with its interval in brackets for the page, 0 to 1 for a spreadsheet. */
export const percent = (share: Estimate): Valued => ({
  text: short(share, 100),
  parts: estimateParts(share, 'share'),
});

/**
 * The mean and the ends of its interval, none of them where no replication has a value; where it has no
 * interval for a reason, also how many replications would do (`needs`), or what it is under.
 */
export function estimateParts(estimate: Estimate, form: Form = 'number', scale = 1): Part[] {
  const { n, mean, low, high, needs, most } = estimate;
  const part = (name: string, value: number | null): Part => ({
    name,
    value: value === null || n === 0 ? null : value * scale,
    form,
  });
  return [
    part('', mean),
    part('low', low),
    part('high', high),
    ...(needs === undefined ? [] : [{ name: 'needs', value: needs, form: 'count' } as const]),
    ...(most === undefined ? [] : [part('under', most)]),
  ];
}

/** A day as an ISO date; null or '': there is none. */
export const day = (date: string | null): Cell =>
  date === null || date === '' ? '' : { text: date, parts: [dayPart('', date)] };

export const dayPart = (name: string, value: string | null): Part => ({ name, value, form: 'day' });
