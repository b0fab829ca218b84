import { readArguments } from './arguments/parse.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { Interrupted } from './interrupt.js';
import { allowClosedPipes, print, say, sayError } from './output.js';

/** Runs one command line to its exit code. Each command loads what it needs only when it is asked for. */
export async function run(args: readonly string[]): Promise<ExitCode> {
  allowClosedPipes();
  try {
    return await obey(args);
  } catch (error) {
    if (!(error instanceof Interrupted)) return sayError(error);
    say('interrupted; no report was written');
    return EXIT.interrupted;
  }
}

async function obey(args: readonly string[]): Promise<ExitCode> {
  const request = readArguments(args);
  switch (request.command) {
    case 'text':
      print(request.text);
      return EXIT.done;
    case 'check':
      return (await import('./commands/check.js')).check(request);
    case 'simulate':
      return (await import('./commands/simulate.js')).simulate(request);
    case 'merge':
      return (await import('./commands/merge.js')).merge(request);
    case 'rate':
      return (await import('./commands/rate.js')).rate(request);
    case 'reliefs':
      return (await import('./commands/reliefs.js')).reliefs(request);
    case 'compare':
      return (await import('./commands/compare.js')).compare(request);
    case 'buffers':
      return (await import('./commands/buffers.js')).buffers(request);
    case 'schema':
      return (await import('./commands/schema.js')).schema(request);
  }
}
