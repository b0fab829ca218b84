import { LEAST_FOR_PRECISION } from '../../study/answer/precision.js';
import { PRECISION_MEASURES, type PrecisionMeasure } from '../../study/answer/precision.js';
import type { PrecisionAsked } from '../../study/answer/precision.js';
import { MOST_REPLICATIONS } from './readers.js';
import { perCent, wholeNumber } from './readers.js';
import { UsageError } from '../usage-error.js';

interface PrecisionArguments {
  readonly precision: string | undefined;
  readonly of: string | undefined;
  readonly most: string | undefined;
}

const DEFAULT_MOST = 1000;

/** `--precision`, `--of` and `--most`; undefined where no precision is asked. */
export function precisionAsked(
  { precision, of, most }: PrecisionArguments,
  replications: number,
): PrecisionAsked | undefined {
  if (precision === undefined) {
    const alone = of !== undefined ? 'of' : most !== undefined ? 'most' : undefined;
    if (alone !== undefined)
      throw new UsageError(
        `--${alone}: expected --precision beside it, got none`,
        'add for example --precision 1%',
      );
    return undefined;
  }
  const limit =
    most === undefined ? DEFAULT_MOST : wholeNumber('most', most, LEAST_FOR_PRECISION, MOST_REPLICATIONS);
  if (limit < replications)
    throw new UsageError(
      `--most: expected at least the ${replications} replications to begin with, got ${limit}`,
      'lower --replications or raise --most',
    );
  return {
    asked: perCent('precision', precision),
    of: of === undefined ? ['throughput'] : measures(of),
    most: limit,
  };
}

function measures(text: string): PrecisionMeasure[] {
  const names = text.split(',').map((name) => name.trim());
  const known = names.map((name) => PRECISION_MEASURES.find((measure) => measure === name));
  const wrong = known.indexOf(undefined);
  if (wrong >= 0)
    throw new UsageError(
      `--of: expected some of ${PRECISION_MEASURES.join(', ')}, got ${JSON.stringify(names[wrong])}`,
      'for example --of throughput,lead-time',
    );
  return [...new Set(known.filter((measure) => measure !== undefined))];
}
