import type { PrecisionAsked } from '../../study/answer/precision.js';
import {
  LEAST_FOR_PRECISION,
  PRECISION_MEASURES,
  type PrecisionMeasure,
} from '../../study/answer/precision-measures.js';
import { UsageError } from '../usage-error.js';
import { optional, type Reader, type Values } from './option.js';
import { MOST_REPLICATIONS } from './options.js';
import { perCent, wholeNumber } from './readers.js';

const DEFAULT_MOST = 1000,
  NEEDS = { option: 'precision', inWords: '--precision beside it', hint: 'add for example --precision 1%' };

const measures: Reader<readonly PrecisionMeasure[]> = (text, option) => {
  const names = text.split(',').map((name) => name.trim());
  const known = names.map((name) => PRECISION_MEASURES.find((measure) => measure === name));
  const wrong = known.indexOf(undefined);
  if (wrong >= 0)
    throw new UsageError(
      `${option}: expected some of ${PRECISION_MEASURES.join(', ')}, got ${JSON.stringify(names[wrong])}`,
      'for example --of throughput,lead-time',
    );
  return [...new Set(known.filter((measure) => measure !== undefined))];
};

export const PRECISION = {
  precision: optional('adds replications until means are known to this relative error, such as 1%', perCent),
  of: optional(
    `what must be that precise, with commas between: ${PRECISION_MEASURES.join(', ')}; default throughput`,
    measures,
    NEEDS,
  ),
  most: optional(
    `maximum replications with --precision, default ${DEFAULT_MOST}`,
    wholeNumber(LEAST_FOR_PRECISION, MOST_REPLICATIONS),
    NEEDS,
  ),
};

/** What the three options ask together; undefined: there are as many replications as asked. */
export function precisionAsked(
  { precision, of = ['throughput'], most = DEFAULT_MOST }: Values<typeof PRECISION>,
  replications: number,
): PrecisionAsked | undefined {
  if (precision === undefined) return undefined;
  if (most < replications)
    throw new UsageError(
      `--most: expected at least the ${replications} replications to begin with, got ${most}`,
      'lower --replications or raise --most',
    );
  return { asked: precision, of, most };
}
