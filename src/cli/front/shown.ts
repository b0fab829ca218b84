import { shown } from '../../study/shown.js';
import { write } from './write.js';

/** How progress is shown: as lines, as a bar, or not at all. */
export interface Shown {
  readonly say: (line: string) => void;
  readonly draw: (done: number, of: number, text: string) => void;
  /** What takes a while, where it can be wiped out again. */
  readonly wait: (text: string) => void;
  readonly stop: () => void;
}

const nothing = (): void => undefined;
export const SILENT: Shown = { say: nothing, draw: nothing, wait: nothing, stop: nothing };

const say = (line: string): void => {
  write('error', `${shown(line)}\n`);
};

/** Seconds: where there is no bar a line is said so often. */
const BETWEEN_LINES = 30;

/** @param now a clock in seconds */
export function lines(now: () => number): Shown {
  let last = now();
  return {
    ...SILENT,
    say: (line) => {
      last = now();
      say(line);
    },
    draw: (_, __, text) => {
      if (now() - last < BETWEEN_LINES) return;
      last = now();
      say(text);
    },
  };
}

/** Resolves to a bar on stderr, which is wiped out when it stops. */
export async function bar(): Promise<Shown> {
  const { SingleBar } = (await import('cli-progress')).default;
  const common = {
    stream: process.stderr,
    barCompleteChar: '=',
    barIncompleteChar: ' ',
    barsize: 30,
    hideCursor: null,
    clearOnComplete: true,
    emptyOnZero: true,
    gracefulExit: false,
  };
  const bar = new SingleBar({ ...common, format: '[{bar}] {text}' }),
    waiting = new SingleBar({ ...common, format: '{text}' });
  const stop = (): void => {
    bar.stop();
    waiting.stop();
  };
  return {
    say: (line) => {
      stop();
      say(line);
    },
    draw: (done, of, text) => {
      waiting.stop();
      if (!bar.isActive) {
        bar.start(of, done, { text });
        return;
      }
      // Some studies choose replications as they go.
      bar.setTotal(of);
      bar.update(done, { text });
    },
    wait: (text) => {
      bar.stop();
      if (waiting.isActive) waiting.update({ text: shown(text) });
      else waiting.start(1, 0, { text: shown(text) });
    },
    stop,
  };
}
