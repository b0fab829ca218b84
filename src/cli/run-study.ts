import { stableJson } from '../report/json.js';
import type { ToCome } from '../study/asked.js';
import { fingerprint } from '../study/run/identity.js';
import type { Identity, Journal } from '../study/run/journal.js';
import type { Meter } from '../study/run/meter.js';
import type { ReplicatorOptions } from '../study/run/replicator.js';
import type { Values } from './arguments/option.js';
import type { AnswerRequest } from './arguments/options.js';
import type { WORKERS } from './arguments/workers.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { inFront } from './front/in-front.js';
import type { Interrupt } from './interrupt.js';
import { sealedReport, withJournal } from './journal.js';
import { outputWidth, printJson, printResults, progressOf, say } from './output.js';
import { checkOut, writeReport } from './report-folder.js';
import { throughOf } from './through.js';

/** What a study needs to run and keep its replications, to be stopped and to tell how far it is. */
export interface How<Value> extends Pick<ReplicatorOptions, 'workers' | 'through'> {
  readonly signal: AbortSignal;
  readonly onReplication: (done: number, of: number) => void;
  /** Where finished replications are kept while a report folder is on its way. */
  readonly journal: Journal<Value> | undefined;
  /** A new stage begins, in words. */
  readonly onStage: (text: string) => void;
  /** Told whenever more is known of how many replications there will be. */
  readonly onForecast: (toCome: ToCome) => void;
  /** Is told how far each replication under way is. */
  readonly meter: Meter | undefined;
}

/** What a command is asked of its answer; `anyway` where it runs replications. */
type StudyRequest = AnswerRequest & Values<typeof WORKERS> & { readonly anyway?: boolean };

/** A study as its command runs it. */
export interface Study<Found, Value = unknown> {
  /** What is done, for the first line of progress. */
  readonly stage: string;
  /**
   * What its replications hang on, so that a run that was cut off can go on; left out: nothing is kept of
   * them.
   */
  readonly identity?: Identity | undefined;
  readonly run: (how: How<Value>) => Found | Promise<Found>;
  /** What makes the answer plain text, loaded only where it is printed. */
  readonly text: () => Promise<(found: Found, width: number) => string>;
  /** What makes the files of its report folder, loaded only where one is written. */
  readonly drawing: () => Promise<
    (found: Found, notice?: (line: string) => void) => Promise<ReadonlyMap<string, string | Buffer>>
  >;
  /** Whether a script must not overlook what was found. */
  readonly stands: (found: Found) => boolean;
}

/**
 * Runs a study: progress on stderr, the answer on stdout and, if asked for, a report folder, all of it or
 * nothing.
 */
export async function runStudy<Found, Value = unknown>(
  request: StudyRequest,
  interrupt: Interrupt,
  study: Study<Found, Value>,
): Promise<ExitCode> {
  const { out, replace, json, quiet, findingOk, anyway = false, workers } = request;
  // Before a run that may take long, not after it.
  const sealed = out === undefined || replace ? undefined : sealedReport(out, study.identity);
  if (out !== undefined && sealed === undefined) checkOut(out, replace);
  const progress = progressOf(quiet, anyway);
  progress.stage(study.stage);
  const through = await throughOf(request);
  const answer = async (journal?: Journal<Value>): Promise<Found> => {
    const how = {
      workers,
      through,
      signal: interrupt.signal,
      onReplication: progress.replications,
      journal,
      onStage: progress.stage,
      onForecast: progress.forecast,
      meter: inFront().meter,
    };
    const found = await interrupt.orStop((async () => study.run(how))()).finally(progress.stop);
    // Printed first: whatever happens to the folder, the answer is not lost.
    if (json) printJson(stableJson(found));
    else printResults((await study.text())(found, outputWidth()));
    if (out !== undefined && sealed !== undefined && sealed === fingerprint(stableJson(found))) {
      progress.stage(`${out} is the report of this very study already, and whole; nothing was written`);
    } else if (out !== undefined) {
      progress.stage('drawing the report');
      const draw = await interrupt.orStop(study.drawing()),
        files = await interrupt.orStop(draw(found, quiet ? undefined : say));
      checkOut(out, replace);
      // As it will stand in the folder, where a later command compares it.
      journal?.seal(fingerprint(files.get('results.json')));
      writeReport(out, files, replace);
      progress.stage(`report: ${out}`);
    } else if (!quiet) {
      say('hint: --out DIR writes a folder with pictures, a page to read and the data');
    }
    return found;
  };
  const found =
    out === undefined || study.identity === undefined
      ? await answer()
      : await withJournal(out, study.identity, progress, answer);
  return study.stands(found) && !findingOk ? EXIT.finding : EXIT.done;
}
