import type { Shard } from '../../study/run/fixed-design.js';
import { UsageError } from '../usage-error.js';

/** What stands beside --shard on the command line. */
interface ShardArguments {
  readonly shard: string | undefined;
  readonly out: string | undefined;
  readonly replace: boolean;
  readonly json: boolean;
  readonly journey?: string | undefined;
  readonly precision?: string | undefined;
}

/** Studies that choose as they go which replications they run next. */
const AS_THEY_GO = ['rate', 'reliefs', 'buffers'];

/** Why `--shard` is refused behind such a command; undefined: it is none of them. */
export function noShardOf(command = ''): UsageError | undefined {
  return !AS_THEY_GO.includes(command)
    ? undefined
    : noPart('shard', command, 'leave --shard out; simulate without --precision and compare can be sharded');
}

function noPart(option: string, beside: string, remedy: string): UsageError {
  return new UsageError(
    `--${option}: expected no such option with ${beside}, got it`,
    'which replications it runs next shows as they are run, so no part of them can be run apart: ' +
      `${remedy}, see docs/shards.md`,
  );
}

/** The part of the replications that is asked for; undefined: all of them. */
export function shardOf(
  { shard, out, replace, json, journey, precision }: ShardArguments,
  replications: number,
): Shard | undefined {
  if (shard === undefined) return undefined;
  const [, index = 0, of = 0] = (/^(\d{1,6})\/(\d{1,6})$/.exec(shard) ?? []).map(Number);
  if (index < 1 || index > of)
    throw new UsageError(
      `--shard: expected I/N with I from 1 to N, got ${JSON.stringify(shard)}`,
      'for example --shard 2/4, the second of four',
    );
  if (of > replications)
    throw new UsageError(
      `--shard: expected at most as many shards as replications, ${replications}, got ${of}`,
      'ask for fewer shards, or for more with --replications',
    );
  if (precision !== undefined)
    throw noPart('precision', '--shard', 'leave --precision out and give --replications');
  if (out === undefined)
    throw new UsageError('--shard: expected --out with the folder for the shard, got none', 'add --out DIR');
  const later = Object.entries({ replace, json, journey }).find(
    ([, value]) => value !== false && value !== undefined,
  );
  if (later !== undefined)
    throw new UsageError(
      `--${later[0]}: expected no such option with --shard, got it`,
      'give it to `rateproof merge`',
    );
  return { index, of };
}
