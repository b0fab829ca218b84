import { readArguments } from './arguments/parse.js';
import { COMMANDS } from './commands/index.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { Interrupted } from './interrupt.js';
import { INTERRUPTED, print, say, sayError } from './output.js';

/** Runs one command line to its exit code. */
export async function run(args: readonly string[]): Promise<ExitCode> {
  try {
    const asked = readArguments(COMMANDS, args);
    if ('run' in asked) return await asked.run();
    print(asked.text);
    return EXIT.done;
  } catch (error) {
    if (!(error instanceof Interrupted)) return sayError(error);
    say(INTERRUPTED);
    return EXIT.interrupted;
  }
}
