import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { count } from '../study/format.js';
import { fingerprint } from '../study/run/identity.js';
import { type Identity, Journal, JournalError } from '../study/run/journal.js';
import { writing } from './files.js';
import type { Progress } from './front/said.js';
import { say, sayIfEnded } from './output.js';
import { systemReason, UsageError } from './usage-error.js';

/** Where finished replications are kept until `out` is written: beside it. */
export function journalPath(out: string): string {
  const path = `${resolve(out)}.journal`;
  return isAbsolute(out) ? path : relative('', path);
}

/**
 * Does work that keeps its finished replications in a journal beside `out`, and removes it when all is done.
 * Whatever ends the work before, the journal stays and the next run goes on from it. A UsageError for that of
 * another study.
 */
export async function withJournal<Value, Found>(
  out: string,
  identity: Identity,
  { stage }: Progress,
  work: (journal: Journal<Value>) => Promise<Found>,
): Promise<Found> {
  const path = journalPath(out),
    journal = open<Value>(path, identity);
  if (journal.size > 0)
    stage(`found ${replications(journal.size)} of an earlier run in ${path}, going on from there`);
  sayIfEnded(`what is finished is kept in ${path}; the same command goes on from there`);
  let found: Found;
  try {
    found = await work(journal);
  } catch (error) {
    // It stays open: threads that were given up may still write to it.
    if (journal.size === 0) removeJournal(path);
    else say(`${replications(journal.size)} kept in ${path}; the same command goes on from there`);
    const reason = systemReason(error);
    throw reason !== undefined && (error as NodeJS.ErrnoException).syscall === 'write'
      ? new UsageError(
          `expected to be able to write ${path}, got ${reason}`,
          'make room, then give the same command again',
        )
      : error;
  }
  journal.close();
  removeJournal(path);
  sayIfEnded('');
  return found;
}

/** Tried again while a virus scanner holds it; one that stays does no harm, since all is written. */
export function removeJournal(path: string, remove: typeof rmSync = rmSync): void {
  try {
    // Only a removal that goes into folders is tried again.
    remove(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  } catch (error) {
    const reason = systemReason(error);
    if (reason === undefined) throw error;
    say(
      `expected to be able to remove ${path}, got ${reason}; it is not needed any more, delete it yourself`,
    );
  }
}

/**
 * The fingerprint of the results of a report in `out` that a study of this identity has written whole before
 * it was cut off: its journal is still there and tells of it. Undefined where there is none.
 */
export function sealedReport(out: string, identity: Identity | undefined): string | undefined {
  const path = journalPath(out),
    results = join(out, 'results.json');
  if (identity === undefined || !existsSync(results) || !existsSync(path)) return undefined;
  try {
    const journal = new Journal(path, identity, true),
      { sealed } = journal;
    journal.close();
    return sealed === fingerprint(readFileSync(results, 'utf8')) ? sealed : undefined;
  } catch {
    // Whatever is wrong with them is told by those who want to write there.
    return undefined;
  }
}

const replications = (finished: number): string => count(finished, 'finished replication');

function open<Value>(path: string, identity: Identity): Journal<Value> {
  try {
    return writing(path, () => {
      mkdirSync(dirname(path), { recursive: true });
      return new Journal<Value>(path, identity);
    });
  } catch (error) {
    throw error instanceof JournalError
      ? new UsageError(error.message, `to begin anew delete ${path}, or choose another name with --out`)
      : error;
  }
}
