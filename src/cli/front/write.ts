import { EXIT } from '../exit-code.js';

/** Writes to the stream of the process, text that is safe to show. */
export function write(kind: 'out' | 'error', text: string): void {
  (kind === 'out' ? process.stdout : process.stderr).write(text);
}

/** A reader that has seen enough (`| head`) is no error; the work goes on, and its exit code stands. */
export function allowClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') return;
      process.exitCode = EXIT.usage;
      if (stream === process.stdout)
        write(
          'error',
          `error: expected to be able to write the output, got ${error.code ?? error.message}\n`,
        );
    });
  }
}
