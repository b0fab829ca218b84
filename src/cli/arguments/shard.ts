import type { Shard } from '../../study/run/fixed-design.js';
import { UsageError } from '../usage-error.js';
import { type Option, optional, type Reader } from './option.js';
import { reader } from './readers.js';

const part: Reader<Shard> = reader(
  'I/N with I from 1 to N',
  (option) => `for example ${option} 2/4, the second of four`,
  (text) => {
    const [, index = 0, of = 0] = (/^(\d{1,6})\/(\d{1,6})$/.exec(text) ?? []).map(Number);
    return index >= 1 && index <= of ? { index, of } : undefined;
  },
);

/** The part of the replications that is run, for `merge`; undefined: all of them. */
export const SHARD = optional(
  'I/N: run only the I-th of N parts into the folder --out, for `rateproof merge`',
  part,
  { option: 'out', inWords: '--out with the folder for the shard', hint: 'add --out DIR' },
);

/** In the place of SHARD in a study that chooses as it goes which replications it runs next. */
export const noShard = (study: string): Option<undefined> => ({
  ...SHARD,
  help: undefined,
  read: (texts) => {
    if (texts.length === 0) return undefined;
    throw noPart(
      'shard',
      study,
      'leave --shard out; simulate without --precision, compare and factors can be sharded',
    );
  },
});

const noPart = (option: string, beside: string, remedy: string): UsageError =>
  new UsageError(
    `--${option}: expected no such option with ${beside}, got it`,
    'which replications it runs next shows as they are run, so no part of them can be run apart: ' +
      `${remedy}, see docs/shards.md`,
  );

/** What is asked beside a shard. */
interface Beside {
  readonly shard: Shard | undefined;
  readonly replications: number;
  readonly replace: boolean;
  readonly json: boolean;
  readonly journey?: string | undefined;
  readonly precision?: object | undefined;
}

/** Throws a UsageError for what a shard cannot give. */
export function checkShard({ shard, replications, replace, json, journey, precision }: Beside): void {
  if (shard === undefined) return;
  if (shard.of > replications)
    throw new UsageError(
      `--shard: expected at most as many shards as replications, ${replications}, got ${shard.of}`,
      'ask for fewer shards, or for more with --replications',
    );
  if (precision !== undefined)
    throw noPart('precision', '--shard', 'leave --precision out and give --replications');
  const later = Object.entries({ replace, json, journey }).find(
    ([, value]) => value !== false && value !== undefined,
  );
  if (later !== undefined)
    throw new UsageError(
      `--${later[0]}: expected no such option with --shard, got it`,
      'give it to `rateproof merge`',
    );
}
