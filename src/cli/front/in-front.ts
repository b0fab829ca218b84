import type { Meter } from '../../study/run/meter.js';
import type { Said } from './said.js';
import { write } from './write.js';

/** What this thread has of the one in front of it, which hears Ctrl-C, shows progress and prints. */
export interface InFront {
  readonly tell: (said: Said) => void;
  /** Width of the terminal; undefined where the answer goes to a file or a pipe. */
  readonly columns?: number | undefined;
  readonly meter?: Meter;
}

/** Without one, as in tests, all goes to the streams themselves. */
let front: InFront = {
  tell: (said) => {
    if (said.kind === 'out' || said.kind === 'error') write(said.kind, said.text);
  },
};

export const inFront = (): InFront => front;

/** From now on this thread works for another. */
export function workFor(other: InFront): void {
  front = other;
}
