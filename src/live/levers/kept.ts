import type { SetLever } from '../../scenario/levers.js';
import { withUnit } from '../../scenario/values/amount.js';

/** A lever with the number that a reader has set. */
export interface Moved {
  readonly lever: SetLever;
  readonly to: number;
}

/** Names in a file have so many letters at most. */
const LONGEST_NAME = 80;

/** What can stand in YAML without quotes as a key; less than YAML allows. */
const PLAIN = /^(?:[A-Za-z]|\d+ [A-Za-z])[A-Za-z0-9 ._-]*[A-Za-z0-9]$/;
const key = (text: string): string => (PLAIN.test(text) ? text : JSON.stringify(text));

/** The changes as an entry of a file of what-ifs, for `rateproof compare`. */
export function whatIfLines(moved: readonly Moved[]): string {
  const name = moved.map(({ lever, to }) => `${to}${lever.unit} ${lever.name}`).join(', '),
    cut = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 3).trimEnd()}...` : name;
  return [
    `${key(cut)}:`,
    '  changes:',
    ...moved.map(({ lever, to }) => {
      const value = withUnit({ number: to, unit: lever.unit });
      return `    - ${key(lever.change)}: ${typeof value === 'number' ? value : JSON.stringify(value)}`;
    }),
    '',
  ].join('\n');
}

const MARK = '#try&';

/** The part of the page's address behind which it holds these changes; `#` for none. */
export function addressOf(moved: readonly Moved[]): string {
  if (moved.length === 0) return '#';
  return MARK + new URLSearchParams(moved.map(({ lever, to }) => [lever.name, String(to)])).toString();
}

/** Whether an address holds changes, perhaps none of those that there are now. */
export const holdsChanges = (address: string): boolean => address.startsWith(MARK);

/** The numbers of the levers that an address holds; what it does not name is as in the report. */
export function numbersIn(address: string, levers: readonly SetLever[]): number[] {
  const asked = new URLSearchParams(holdsChanges(address) ? address.slice(MARK.length) : '');
  return levers.map(({ name, now }) => {
    const to = Number(asked.get(name) ?? NaN);
    return Number.isFinite(to) ? to : now;
  });
}
