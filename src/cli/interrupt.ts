import { setImmediate } from 'node:timers/promises';
import type { Stop } from './front/said.js';
import { UsageError } from './usage-error.js';

/** The user pressed Ctrl-C. */
export class Interrupted extends Error {}

export interface Interrupt {
  readonly signal: AbortSignal;
  /** The outcome of `work`, or the reason to stop as soon as there is one, whether `work` minds it or not. */
  orStop<T>(work: Promise<T>): Promise<T>;
}

const controller = new AbortController();

/** What to end a command with. */
export const reasonOf = (why: Stop): Error =>
  why.kind === 'interrupt' ? new Interrupted('interrupted') : new UsageError(why.message, why.hint);

/** The thread in front wants the work to stop: in order, if that can be heard in time. */
export function stop(why: Stop): void {
  controller.abort(reasonOf(why));
}

/** What stops the work of this thread. */
export function listenForInterrupt(): Interrupt {
  const { signal } = controller;
  return {
    signal,
    async orStop(work) {
      const stopped = new Promise<never>((_, reject) => {
        const give = (): void => {
          reject(signal.reason as Error);
        };
        if (signal.aborted) give();
        else signal.addEventListener('abort', give, { once: true });
      });
      const outcome = await Promise.race([work, stopped]);
      // Work that held the thread kept the word to stop out.
      await setImmediate();
      signal.throwIfAborted();
      return outcome;
    },
  };
}
