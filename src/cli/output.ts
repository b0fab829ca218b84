import { shown } from '../study/shown.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { UsageError } from './usage-error.js';

/** Data goes to stdout, so that it can be piped. */
export function print(text: string): void {
  process.stdout.write(shown(text.endsWith('\n') ? text : `${text}\n`));
}

/** JSON for a program to read, as it is: what `stableJson` gives is safe. */
export function printJson(json: string): void {
  process.stdout.write(json);
}

const WIDEST = 100,
  NARROWEST = 30;
/** Width in which the answer is laid out: the terminal's, within reason; in a file or a pipe the widest. */
export function outputWidth(): number {
  const { isTTY, columns } = process.stdout as { isTTY?: boolean; columns?: number };
  return isTTY === true && columns !== undefined && columns > 0
    ? Math.min(WIDEST, Math.max(NARROWEST, columns))
    : WIDEST;
}

/** Talk goes to stderr. */
export function say(line: string): void {
  process.stderr.write(`${shown(line)}\n`);
}

/** A reader that has seen enough (`| head`) is no error; the work goes on, and its exit code stands. */
export function allowClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') return;
      process.exitCode = EXIT.usage;
      if (stream === process.stdout)
        say(`error: expected to be able to write the output, got ${error.code ?? error.message}`);
    });
  }
}

/** Tells what went wrong, and whose it is to solve. */
export function sayError(error: unknown): ExitCode {
  if (error instanceof UsageError) {
    for (const line of error.details) say(line);
    say(`error: ${error.message}`);
    if (error.hint !== undefined) say(`hint: ${error.hint}`);
    return EXIT.usage;
  }
  say(
    'error: this is a fault of rateproof, not yours; please report it with the command, the ' +
      'scenario and what stands below',
  );
  say(error instanceof Error ? (error.stack ?? error.message) : `thrown: ${String(error)}`);
  return EXIT.fault;
}
