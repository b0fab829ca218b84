import { minutesOf } from '../../scenario/values/quantity.js';
import { type DecimalMark, numberIn } from './numbers.js';

const CLOCKED = /^([+-]?)(\d{1,5}):([0-5]\d)(?::([0-5]\d))?$/;
const WITH_UNIT = /^([+-]?[\d.,]+) *(s|min|h)$/;

/**
 * Minutes as people write them down: `42.5`, `1.5 h`, `90 s`, and hours and minutes by the clock, `1:30` or
 * `1:30:00`. NaN where it is none.
 */
export function minutesIn(text: string, mark: DecimalMark): number {
  const [, sign, hours, minutes, seconds = '0'] = CLOCKED.exec(text) ?? [];
  if (hours !== undefined)
    return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes) + Number(seconds) / 60);
  const [, amount, unit = ''] = WITH_UNIT.exec(text) ?? [];
  if (amount === undefined) return numberIn(text, mark);
  return numberIn(amount, mark) * (minutesOf(`1 ${unit}`) ?? NaN);
}

/** The number in such a text, from which the decimal mark of a column is seen. */
export const amountIn = (text: string): string => WITH_UNIT.exec(text)?.[1] ?? text;
