import { say } from './output.js';

/** How far a long command has come. */
export interface Progress {
  /** A new stage begins. */
  readonly stage: (text: string) => void;
  /** Replications done; only while they run. */
  readonly replications: (done: number, of: number) => void;
  /** The replications have ended, or were given up. */
  readonly stop: () => void;
}

const SILENT: Progress = { stage: () => undefined, replications: () => undefined, stop: () => undefined };

/** On a terminal a bar, elsewhere one line a stage, with `quiet` nothing. All of it on stderr. */
export async function progressOf(quiet: boolean): Promise<Progress> {
  if (quiet) return SILENT;
  const lines = { ...SILENT, stage: say };
  // A dumb terminal cannot draw a line over again.
  if (!process.stderr.isTTY || process.env['TERM'] === 'dumb') return lines;
  const { SingleBar } = (await import('cli-progress')).default;
  const bar = new SingleBar({
    stream: process.stderr,
    format: '[{bar}] {value} of {total} replications, {eta_formatted} left',
    barCompleteChar: '=',
    barIncompleteChar: ' ',
    barsize: 30,
    hideCursor: null,
    clearOnComplete: true,
    emptyOnZero: true,
    gracefulExit: false,
  });
  return {
    stage: (text) => {
      bar.stop();
      say(text);
    },
    replications: (done, of) => {
      if (!bar.isActive) {
        bar.start(of, done);
        return;
      }
      // Some studies choose replications as they go.
      bar.setTotal(of);
      bar.update(done);
    },
    stop: () => {
      bar.stop();
    },
  };
}
