import { Worker } from 'node:worker_threads';
import { Meter } from '../../study/run/meter.js';
import { EXIT, type ExitCode } from '../exit-code.js';
import { reasonOf } from '../interrupt.js';
import { say, sayError } from '../output.js';
import { Limits, mostMemory } from './limits.js';
import { progressOn, type Watched } from './progress.js';
import type { Given, Said, Stop } from './said.js';
import { bar, lines, SILENT } from './shown.js';
import { Started } from './started.js';
import { takesCursor, takesStyle, withBold } from './style.js';
import { allowClosedPipes, write } from './write.js';

/** It lies a folder beside the chunk that this file is built into. */
const THREAD = new URL('../cli/thread.js', import.meta.url);

/** Milliseconds for the work to stop in order, and between two looks at it. */
const PATIENCE = 700,
  BETWEEN_LOOKS = 250;

const now = (): number => performance.now() / 1000;

/**
 * Has a command done by a thread and waits in front of it, free at any time: for Ctrl-C, of which the first
 * stops the work in order, if it can be stopped so, and the second at once; for progress; and for what takes
 * too much. Nothing is left half done by an end in the midst: reports and shards take their names when they
 * are whole, and a record that was cut off in a journal is left out.
 */
export async function conduct(args: readonly string[]): Promise<ExitCode> {
  allowClosedPipes();
  const meter = new Meter(),
    started = new Started(),
    terminal = takesCursor(process.env, process.stderr.isTTY) ? await bar() : undefined,
    isStyled = takesStyle(process.env, process.stdout.isTTY),
    columns = process.stdout.isTTY ? process.stdout.columns : undefined;
  const given: Given = { args, columns: columns === 0 ? undefined : columns, meter: meter.shared };
  const thread = new Worker(THREAD, {
    workerData: given,
    // V8's own is a part of the machine's memory, whatever there is.
    resourceLimits: { maxOldGenerationSizeMb: Math.floor(mostMemory() / 2 ** 20) },
  });
  let progress: Watched = progressOn(args.includes('--quiet') ? SILENT : (terminal ?? SILENT), now),
    limits: Limits | null = null,
    units = 0,
    kept = '',
    why: Stop | null = null,
    code: ExitCode | undefined,
    ending: ExitCode | undefined;

  const endNow = async (reason: Stop): Promise<void> => {
    if (ending !== undefined) process.exit(ending);
    progress.stop();
    if (kept !== '') say(kept);
    ending = sayError(reasonOf(reason));
    await started.end();
    process.exit(ending);
  };
  const stop = (reason: Stop): void => {
    if (why !== null) {
      void endNow(why);
      return;
    }
    why = reason;
    thread.postMessage(reason);
    setTimeout(() => void endNow(reason), PATIENCE);
  };
  process.on('SIGINT', () => {
    stop({ kind: 'interrupt' });
  });
  const looks = setInterval(() => {
    progress.tick();
    const found = why === null ? (limits?.look(progress.secondsLeft(), units) ?? null) : null;
    if (found !== null) stop(found);
  }, BETWEEN_LOOKS);

  const hear = (said: Said): void => {
    if (ending !== undefined && said.kind !== 'process') return;
    switch (said.kind) {
      case 'begin':
        progress = progressOn(said.quiet ? SILENT : (terminal ?? lines(now)), now, () => meter.inside);
        limits = said.anyway ? null : new Limits();
        break;
      case 'asked':
        ({ units } = said);
        break;
      case 'out':
      case 'error':
        progress.stop();
        write(said.kind, isStyled ? withBold(said.text, said.bold ?? 0) : said.text);
        break;
      case 'kept':
        kept = said.text;
        break;
      case 'process':
        started.hear(said);
        break;
      case 'code':
        ({ code } = said);
        // What goes on of work that was given up need not be waited for.
        if (why !== null) process.exit(code);
        break;
      default:
        (progress[said.kind] as (...args: unknown[]) => void)(...said.args);
    }
  };
  return new Promise((resolve) => {
    const end = (found: ExitCode): void => {
      clearInterval(looks);
      process.removeAllListeners('SIGINT');
      progress.stop();
      resolve(found);
    };
    thread.on('message', hear);
    thread.on('error', (error) => {
      progress.stop();
      code = sayError(error);
    });
    thread.on('exit', () => {
      end(code ?? EXIT.fault);
    });
  });
}
