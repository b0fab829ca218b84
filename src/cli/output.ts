import { ranOutOfMemory } from '../study/run/out-of-memory.js';
import { WorkersError } from '../study/run/workers/workers-error.js';
import { shown } from '../study/shown.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { inFront } from './front/in-front.js';
import type { Progress } from './front/said.js';
import { Interrupted } from './interrupt.js';
import { UsageError } from './usage-error.js';

/** Data goes to stdout, so that it can be piped. */
export function print(text: string): void {
  inFront().tell({ kind: 'out', text: shown(text.endsWith('\n') ? text : `${text}\n`) });
}

/** The same of the results of a study: their first paragraph is the answer. */
export function printResults(text: string): void {
  const safe = shown(`${text}\n`);
  inFront().tell({ kind: 'out', text: safe, bold: Math.max(0, safe.indexOf('\n\n')) });
}

/** JSON for a program to read, as it is: what `stableJson` gives is safe. */
export function printJson(json: string): void {
  inFront().tell({ kind: 'out', text: json });
}

/** The same of SVG: what `mapSvg` gives is safe. */
export const printSvg = printJson;

const WIDEST = 100,
  NARROWEST = 30;
/** Width in which the answer is laid out: the terminal's, within reason; in a file or a pipe the widest. */
export function outputWidth(): number {
  const { columns } = inFront();
  return columns === undefined ? WIDEST : Math.min(WIDEST, Math.max(NARROWEST, columns));
}

/** Talk goes to stderr. */
export function say(line: string): void {
  inFront().tell({ kind: 'error', text: `${shown(line)}\n` });
}

/** What to say of what is left, should the work have to be ended in its midst. */
export function sayIfEnded(text: string): void {
  inFront().tell({ kind: 'kept', text });
}

/**
 * A study begins: its progress is shown in front, none with `quiet`, and what would take too long or too much
 * memory is ended there, unless it is to be done `anyway`.
 */
export function progressOf(quiet: boolean, anyway: boolean): Progress {
  const { tell } = inFront();
  tell({ kind: 'begin', quiet, anyway });
  return {
    stage: (...args) => {
      tell({ kind: 'stage', args });
    },
    busy: (...args) => {
      tell({ kind: 'busy', args });
    },
    replications: (...args) => {
      tell({ kind: 'replications', args });
    },
    forecast: (...args) => {
      tell({ kind: 'forecast', args });
    },
    stop: (...args) => {
      tell({ kind: 'stop', args });
    },
  };
}

const MEMORY_HINT =
  'ask for fewer units or a shorter programme, use fewer --workers, or take a machine with more memory';

const WORKERS_HINT =
  'each worker is a process that runs `rateproof worker` of this very version; docs/through.md shows how';

/** Tells why a command did not come to its end: interrupted, or wrong, and whose it is to solve. */
export function sayError(error: unknown): ExitCode {
  if (error instanceof Interrupted) {
    say('interrupted; no report was written');
    return EXIT.interrupted;
  }
  if (error instanceof WorkersError) return sayError(new UsageError(error.message, WORKERS_HINT, error.said));
  if (error instanceof UsageError) {
    for (const line of error.details) say(line);
    say(`error: ${error.message}`);
    if (error.hint !== undefined) say(`hint: ${error.hint}`);
    return EXIT.usage;
  }
  if (ranOutOfMemory(error)) {
    say('error: expected the study to fit into memory, it took all there is');
    say(`hint: ${MEMORY_HINT}`);
    return EXIT.usage;
  }
  say(
    'error: this is a fault of rateproof, not yours; please report it with the command, the ' +
      'scenario and what stands below',
  );
  say(error instanceof Error ? (error.stack ?? error.message) : `thrown: ${String(error)}`);
  return EXIT.fault;
}
