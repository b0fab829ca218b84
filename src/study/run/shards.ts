import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FixedDesign, replicationsOf, type Shard, shardName } from './fixed-design.js';
import { fingerprint } from './identity.js';
import { differences, type Identity, Journal } from './journal.js';
import { keyOf, lastOf } from './replicator.js';
import { writeWhole } from './whole-folder.js';

const FORMAT = 'rateproof shard',
  VERSION = 2;
const ABOUT = 'shard.json',
  VALUES = 'shard.journal';

/** What a folder with a finished shard says of itself. */
export interface ShardAbout {
  readonly format: typeof FORMAT;
  readonly version: number;
  readonly identity: Identity;
  readonly shard: Shard;
  /**
   * What the study's design is made from, scenario and all, as plain JSON; its keys differ from study to
   * study.
   */
  readonly asked: Readonly<Record<string, unknown>>;
  /** SHA-256 of all the others: a file that was changed is told before anything is made of it. */
  readonly sum: string;
}

export interface ShardFolder {
  readonly path: string;
  readonly about: ShardAbout;
}

/** A folder that is not what was expected: the user's to solve. */
export class ShardError extends Error {}

export function aboutShard(identity: Identity, asked: object, shard: Shard): ShardAbout {
  const about = {
    format: FORMAT,
    version: VERSION,
    identity,
    shard,
    asked: JSON.parse(JSON.stringify(asked, onlyFinite)) as Record<string, unknown>,
  } as const;
  return { ...about, sum: sumOf(about) };
}

const sumOf = ({ identity, shard, asked }: Omit<ShardAbout, 'sum'>): string =>
  fingerprint([identity, shard, asked]);

/** @throws ShardError if there is no shard, and an error of the system if it cannot be read */
export function readShard(path: string): ShardFolder {
  const about = join(path, ABOUT);
  if (!existsSync(about))
    throw new ShardError(`${path}: expected the folder of a finished shard, got one without ${ABOUT}`);
  let found: Partial<ShardAbout> | null = null;
  try {
    found = JSON.parse(readFileSync(about, 'utf8')) as Partial<ShardAbout> | null;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  if (found?.format !== FORMAT || found.version !== VERSION)
    throw new ShardError(`${about}: expected that of a shard of this version, got another`);
  if (found.sum !== sumOf(found as ShardAbout))
    throw new ShardError(`${about}: expected it as it was written, got a changed or damaged file`);
  return { path, about: found as ShardAbout };
}

/** What sets two shards apart besides their place in the whole, in words; nothing: they belong together. */
export function shardDifferences(seen: ShardAbout, wanted: ShardAbout): string[] {
  const text = ({ identity, asked, shard }: ShardAbout): Identity => {
    const plain = Object.entries(asked)
      .filter(([, value]) => typeof value !== 'object')
      .map(([name, value]) => [name, String(value)]);
    return { ...(Object.fromEntries(plain) as Identity), ...identity, shards: String(shard.of) };
  };
  const found = differences(text(seen), text(wanted));
  if (found.length > 0) return found;
  // With the same digests, what is left are names and remarks. They stand in the results too.
  const other = Object.keys(wanted.asked).find(
    (name) => JSON.stringify(seen.asked[name]) !== JSON.stringify(wanted.asked[name]),
  );
  return other === undefined
    ? []
    : [OTHERS.get(other) ?? `what the ${other} says of where its values come from is another`];
}

/** What else may be another, by the key of what was asked. */
const OTHERS: ReadonlyMap<string, string> = new Map([
  ['whatIfs', 'names or notes of the what-ifs are others'],
  ['zones', 'the difference that does not matter is another'],
]);

/** The keys under which the values of a shard stand: by variant, in replication order. */
function* keysOf(
  { shard }: ShardAbout,
  { variants, replications }: Pick<FixedDesign<unknown, unknown>, 'variants' | 'replications'>,
): Generator<string> {
  for (const variant of variants)
    for (const replication of replicationsOf(shard, lastOf(variant, replications)))
      yield keyOf(variant, replication);
}

/**
 * Writes a finished shard, whole or not at all, with its values by variant.
 * @param read gives the value of a key, one at a time
 * @throws ShardError if it gives none
 */
export function writeShard<Value>(
  path: string,
  about: ShardAbout,
  design: FixedDesign<Value, unknown>,
  read: (key: string) => Value | undefined,
): void {
  writeWhole(path, (folder) => {
    writeFileSync(join(folder, ABOUT), `${JSON.stringify(about, null, 1)}\n`);
    const journal = new Journal<Value>(join(folder, VALUES), about.identity);
    try {
      for (const key of keysOf(about, design)) {
        const value = read(key);
        if (value === undefined)
          throw new ShardError(
            `${shardName(about.shard)}: expected every replication in its journal as it was written, got ` +
              'one that is not',
          );
        journal.add(key, value);
      }
    } finally {
      journal.close();
    }
  });
}

/** The values of a shard by key of the journal, each read when it is asked for. */
export interface ShardValues<Value> {
  /** @throws ShardError if it is no longer there as it was */
  get(key: string): Value;
  close(): void;
}

/**
 * Opens the values of a shard, until they are closed.
 * @throws ShardError if it does not hold all that it should
 */
export function openShardValues<Value>(
  { path, about }: ShardFolder,
  design: FixedDesign<Value, unknown>,
): ShardValues<Value> {
  const file = join(path, VALUES),
    damaged = (): ShardError =>
      new ShardError(`${file}: expected every replication of ${shardName(about.shard)}, got a damaged file`);
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) throw damaged();
  const journal = new Journal<Value>(file, about.identity, true);
  for (const key of keysOf(about, design))
    if (!journal.has(key)) {
      journal.close();
      throw damaged();
    }
  return {
    get: (key) => {
      const value = journal.get(key);
      if (value === undefined) throw damaged();
      return value;
    },
    close: () => {
      journal.close();
    },
  };
}

/** JSON would turn it into null without a word. */
function onlyFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError(`expected only finite numbers in what is asked, got ${value} as ${key}`);
  return value;
}
