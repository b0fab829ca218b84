import { createHash } from 'node:crypto';
import fc from 'fast-check';
import type { Verdict } from './demands.js';
import type { AnyKind, Kind, Shown } from './kinds.js';
import type { Reader } from './reader.js';

/** A fault that was found, with the smallest case that shows it. */
export interface Fault {
  readonly kind: string;
  readonly batch: number;
  readonly seed: number;
  /** Of fast-check: replays the case from the seed. */
  readonly path: string;
  readonly why: string;
  readonly shown: Shown;
}
export type Counts = Record<Verdict['kind'] | 'tried', number>;

/** Cases tried to make one smaller, and for how long. */
const MOST_SHRINKS = 300,
  LONGEST_SHRINK_MS = 60_000;

/** What the same fault says with other numbers and texts. */
export const likeness = (why: string): string =>
  why
    .split('\n')
    .slice(0, 3)
    .join('\n')
    .replace(/"(\\.|[^"\\])*"/g, '""')
    .replace(/\d+(\.\d+)?(e[+-]?\d+)?/g, '#')
    .slice(0, 240);

/** The seed of a batch: the same whatever else is run, and in whatever order. */
const seedOf = (seed: string, kind: string, batch: number): number =>
  createHash('sha256').update(`${seed} ${kind} ${batch}`).digest().readInt32LE();

/**
 * Tries one batch of a kind. The first case with a fault that is not `known` yet is made smaller and ends the
 * batch; those with a known one are counted.
 */
export async function tryBatch<Case>(
  kind: Kind<Case>,
  asked: { readonly seed: string; readonly batch: number; readonly size?: number },
  { reader, counts, known }: { reader: Reader; counts: Counts; known: Set<string> },
): Promise<Fault | undefined> {
  const seed = seedOf(asked.seed, kind.name, asked.batch);
  let found: string | undefined,
    tries = 0,
    end = Infinity;
  const property = fc.asyncProperty(kind.cases, async (made) => {
    const isShrink = found !== undefined;
    if (isShrink && (++tries > MOST_SHRINKS || Date.now() > end)) return;
    const verdict = await kind.judge(made, reader).catch(
      (error: unknown): Verdict => ({
        kind: 'failed',
        why: `thrown: ${String((error as Error).stack ?? error)}`,
      }),
    );
    if (!isShrink) {
      counts.tried++;
      counts[verdict.kind]++;
    }
    if (verdict.kind !== 'failed') return;
    const like = likeness(verdict.why);
    if (!isShrink && !known.has(like)) {
      found = like;
      end = Date.now() + LONGEST_SHRINK_MS;
    }
    if (found === like) throw new Error(verdict.why);
  });
  const details = await fc.check(property, { seed, numRuns: asked.size ?? kind.batch });
  if (!details.failed) return undefined;
  if (found !== undefined) known.add(found);
  const [smallest] = details.counterexample as [Case];
  return {
    kind: kind.name,
    batch: asked.batch,
    seed,
    path: details.counterexamplePath ?? '',
    why: (details.errorInstance as Error).message,
    shown: kind.show(smallest),
  };
}

export const noCounts = (): Counts => ({ tried: 0, accepted: 0, refused: 0, run: 0, skipped: 0, failed: 0 });
export const anyKind = <Case>(kind: Kind<Case>): AnyKind => kind as unknown as AnyKind;
