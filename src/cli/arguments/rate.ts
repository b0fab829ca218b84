import type { Argv } from 'yargs';
import { MOST_REPLICATIONS_OF_RATE } from './readers.js';
import { positiveNumber, wholeNumber } from './readers.js';
import type { RateRequest, RunRequest } from './request.js';
import { UsageError } from '../usage-error.js';

const HIGHEST_RATE = 10_000,
  MOST_RATES = 1000,
  MOST_WEEKS = 520;

/** Options of `rateproof rate` beside those of every study. */
export function rateOptions<Options>(parser: Argv<Options>) {
  return parser
    .option('from', {
      type: 'string',
      requiresArg: true,
      describe: 'lowest rate looked at, units a working day',
    })
    .option('to', { type: 'string', requiresArg: true, describe: 'highest rate looked at' })
    .option('step', {
      type: 'string',
      requiresArg: true,
      default: '0.1',
      describe: 'how close the answer is to be, default 0.1',
    })
    .option('replications', {
      type: 'string',
      requiresArg: true,
      default: '30',
      describe: 'of each rate, default 30; up to four times as many where it is not settled',
    })
    .option('weeks', {
      type: 'string',
      requiresArg: true,
      default: '26',
      describe: 'how long each rate is watched, default 26',
    })
    .option('settle', {
      type: 'string',
      requiresArg: true,
      describe: 'weeks for the floor to fill before that, default by the lead time',
    })
    .option('sure', {
      type: 'string',
      requiresArg: true,
      default: '80 %',
      describe: 'share of replications that has to keep up, default "80 %"',
    })
    .option('ramp-to', {
      type: 'string',
      requiresArg: true,
      describe: 'rate that the ramp leads to, default the highest that holds',
    });
}

export interface RateArguments {
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly step: string;
  readonly replications: string;
  readonly weeks: string;
  readonly settle: string | undefined;
  readonly sure: string;
  readonly 'ramp-to': string | undefined;
}

export function rateRequest(argv: RateArguments): Omit<RateRequest, 'command' | keyof RunRequest> {
  const from = rateOf('from', argv.from),
    to = rateOf('to', argv.to),
    step = rateOf('step', argv.step);
  if (to < from)
    throw new UsageError(
      `--to: expected a rate of at least --from ${from}, got ${to}`,
      'for example --from 3 --to 6',
    );
  if ((to - from) / step > MOST_RATES)
    throw new UsageError(
      `--step: expected at most ${MOST_RATES} rates, got ${Math.floor((to - from) / step) + 1}`,
      'give a wider step',
    );
  return {
    from,
    to,
    step,
    replications: wholeNumber('replications', argv.replications, 2, MOST_REPLICATIONS_OF_RATE),
    weeks: wholeNumber('weeks', argv.weeks, 2, MOST_WEEKS),
    settleWeeks: argv.settle === undefined ? undefined : wholeNumber('settle', argv.settle, 1, MOST_WEEKS),
    sure: sureOf(argv.sure),
    rampTo: argv['ramp-to'] === undefined ? undefined : rateOf('ramp-to', argv['ramp-to']),
  };
}

function rateOf(option: string, text: string | undefined): number {
  if (text === undefined)
    throw new UsageError(
      `expected --${option} with a rate, got none`,
      'units a working day, for example --from 3 --to 6',
    );
  return positiveNumber(
    option,
    text,
    HIGHEST_RATE,
    'units a working day, for example --from 3 --to 6 --step 0.1',
  );
}

function sureOf(text: string): number {
  const value = /^\d{1,3}(\.\d{1,4})?( ?%)?$/.test(text) ? Number(text.replace(/ ?%$/, '')) : NaN;
  if (value >= 1 && value <= 99) return value / 100;
  throw new UsageError(
    `--sure: expected per cent from 1 to 99, got ${JSON.stringify(text)}`,
    'for example --sure "80 %"',
  );
}
