import { shown } from '../../src/study/shown.js';
import type { Outcome } from './run-cli.js';

const { inFront, run, workFor } = (await import(
  new URL('../../dist/cli/library.js', import.meta.url).href
)) as typeof import('../../src/cli/library.js');

let last: Promise<unknown> = Promise.resolve();

/**
 * Runs a command of the program as built in this process: to the same words, files and exit code, without the
 * second in which a process of its own loads and warms up. What it leaves out is the thread in front: Ctrl-C,
 * limits, bars and pipes need `rateproof`, and that both say the same is held by commands/as-built.test.ts.
 * One after the other, as each has the working folder to itself.
 */
export function runHere(cwd: string, ...args: string[]): Promise<Outcome> {
  const outcome = last.then(() => inFolder(cwd, args));
  last = outcome.catch(() => undefined);
  return outcome;
}

async function inFolder(cwd: string, args: readonly string[]): Promise<Outcome> {
  const before = process.cwd(),
    ahead = inFront();
  let stdout = '',
    stderr = '';
  let isQuiet = true;
  workFor({
    tell: (said) => {
      switch (said.kind) {
        case 'begin':
          isQuiet = said.quiet;
          break;
        case 'stage':
          if (!isQuiet) stderr += `${shown(said.args[0])}\n`;
          break;
        case 'out':
          stdout += said.text;
          break;
        case 'error':
          stderr += said.text;
          break;
        default:
        // How far it is: nothing is said of it in a pipe for half a minute.
      }
    },
  });
  process.chdir(cwd);
  try {
    return { code: await run(args), stdout, stderr };
  } finally {
    process.chdir(before);
    workFor(ahead);
  }
}
