import { readArguments } from './arguments/parse.js';
import { COMMANDS } from './commands/index.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { print, sayError } from './output.js';

/** Runs one command line to its exit code. */
export async function run(args: readonly string[]): Promise<ExitCode> {
  try {
    const asked = readArguments(COMMANDS, args);
    if ('run' in asked) return await asked.run();
    print(asked.text);
    return EXIT.done;
  } catch (error) {
    return sayError(error);
  }
}
