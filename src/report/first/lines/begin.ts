import type { ConstraintResult, Tried } from '../../../study/constraint/results.js';
import { helps } from '../../../study/constraint/sentence.js';
import { capital, number } from '../../../study/format.js';
import { advised } from '../../../study/priced/advised.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { changeName } from '../../constraint.js';
import { figure, range } from '../figures.js';
import { sentences } from '../first.js';
import { beginWith, FOR_THE_MONEY, priceInFull, priceText } from './offer.js';

/** Of what was tried and helps, the one to begin with; undefined where nothing surely stops it. */
export interface Begun {
  readonly first: Tried;
  /** `begin with “second booth”, for 410,000 EUR`. */
  readonly text: string;
  /** Behind its gain; '' where it is also what brings most. */
  readonly forMoney: string;
  /** Its price in full, and what brings most where that is another. */
  readonly more: string;
}

export function begunWith(
  found: ConstraintResult | null,
  isEnough?: (tried: Tried) => boolean,
): Begun | undefined {
  const culprit = found?.culprit;
  if (found === null || culprit == null) return undefined;
  const helping = found.tried.filter((each) => helps(each, found.zone)),
    first = advised(helping, isEnough) ?? culprit,
    [most = first] = helping;
  return {
    first,
    text: beginWith(changeName(first.what, first.offer), first.offer),
    forMoney: first === most ? '' : FOR_THE_MONEY,
    more: sentences(
      priceInFull(first.offer),
      first === most
        ? ''
        : `${capital(changeName(most.what, most.offer))} brings the most: ${figure(most.gain)} a day ` +
            `(${range(most.gain)}); ${priceText(most.offer)}.`,
    ),
  };
}

/** Whether one makes up for all that is missing, by both intervals. */
export const isEnough =
  (shipped: Estimate, asked: number | null) =>
  ({ gain }: Tried): boolean =>
    asked !== null && shipped.low !== null && gain.low !== null && shipped.low + gain.low >= asked;

/** `0.20 of the 0.56 missing` */
export function ofMissing({ first, forMoney }: Begun, shipped: Estimate, asked: number): string {
  const missing = number(Number((asked - shipped.mean).toPrecision(2))),
    { gain } = first,
    most = (shipped.high ?? NaN) + (gain.high ?? NaN),
    enough =
      most < asked
        ? forMoney
        : isEnough(shipped, asked)(first)
          ? ', enough alone'
          : `${forMoney}; whether that is enough alone is not settled`;
  return `${figure(gain)} of the ${missing} missing${enough}`;
}
