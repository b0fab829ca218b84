import { statSync } from 'node:fs';
import type { ExitCode } from '../exit-code.js';
import { workFor } from './in-front.js';
import { takesStyle, withBold } from './style.js';
import { allowClosedPipes, write } from './write.js';

/** Bytes of a scenario that is read and checked within a second. */
const SMALL = 200_000;

/** Whether a command is over before anybody could want to stop it: `check` of a small file, and help. */
export function isBrief([command, ...words]: readonly string[]): boolean {
  if (command === undefined || command.startsWith('-')) return true;
  return command === 'check' && words.every((word) => word.startsWith('-') || sizeOf(word) < SMALL);
}

/** None of what is no file. */
const sizeOf = (path: string): number => {
  const found = statSync(path, { throwIfNoEntry: false });
  return found?.isFile() === true ? found.size : Infinity;
};

/** Runs a brief command in this very thread; another would take as long to start as the command takes. */
export async function runBrief(args: readonly string[]): Promise<ExitCode> {
  allowClosedPipes();
  const { isTTY, columns } = process.stdout,
    isStyled = takesStyle(process.env, isTTY);
  workFor({
    tell: (said) => {
      if (said.kind === 'out' || said.kind === 'error')
        write(said.kind, isStyled ? withBold(said.text, said.bold ?? 0) : said.text);
    },
    columns: isTTY && columns !== 0 ? columns : undefined,
  });
  const { run } = await import('../run.js');
  return run(args);
}
