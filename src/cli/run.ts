import { readArguments } from './arguments/parse.js';
import { COMMANDS } from './commands/index.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { print, sayError } from './output.js';
import { endProcesses } from './through.js';

/** Runs one command line to its exit code. */
export async function run(args: readonly string[]): Promise<ExitCode> {
  try {
    const asked = readArguments(COMMANDS, args);
    if ('text' in asked) {
      print(asked.text);
      return EXIT.done;
    }
    // Before anything is said of how it ended.
    return await asked.run().finally(endProcesses);
  } catch (error) {
    return sayError(error);
  }
}
