import { EXIT } from './exit-code.js';

/** The user pressed Ctrl-C. */
export class Interrupted extends Error {}

export interface Interrupt {
  readonly signal: AbortSignal;
  /**
   * The outcome of `work`, or Interrupted as soon as there is an interrupt, whether `work` minds it or not.
   */
  orStop<T>(work: Promise<T>): Promise<T>;
  /**
   * Work that holds the thread for long and leaves nothing behind: Ctrl-C ends the process in the middle of
   * it.
   */
  atOnce<T>(work: () => Promise<T>): Promise<T>;
}

/** From now on the first Ctrl-C stops the work in order; the second ends the process at once. */
export function listenForInterrupt(): Interrupt {
  const controller = new AbortController();
  const { signal } = controller;
  const stop = (): void => {
    if (signal.aborted) process.exit(EXIT.interrupted);
    controller.abort(new Interrupted('interrupted'));
  };
  process.on('SIGINT', stop);
  return {
    signal,
    orStop: (work) =>
      new Promise((resolve, reject) => {
        signal.addEventListener(
          'abort',
          () => {
            reject(signal.reason as Interrupted);
          },
          { once: true },
        );
        work.then(resolve, reject);
      }),
    async atOnce(work) {
      signal.throwIfAborted();
      // A listener is not called while the thread is held; without one, the system acts by itself.
      process.off('SIGINT', stop);
      try {
        return await work();
      } finally {
        process.on('SIGINT', stop);
      }
    },
  };
}
