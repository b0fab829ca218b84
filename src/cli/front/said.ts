import type { ToCome } from '../../study/asked.js';
import type { ExitCode } from '../exit-code.js';

/** How far a long command has come, as the thread that does it tells. */
export interface Progress {
  /** A new stage begins. */
  readonly stage: (text: string) => void;
  /** What is done now, and how far it is; seen only on a terminal, and only once it has taken a while. */
  readonly busy: (text: string, soFar?: string) => void;
  /** Replications done; only while they run. */
  readonly replications: (done: number, of: number) => void;
  /** How many there will be in all, as far as is known; told again whenever more is. */
  readonly forecast: (toCome: ToCome) => void;
  /** The replications have ended, or were given up. */
  readonly stop: () => void;
}

/** A call of one of them. */
type Told = {
  readonly [Name in keyof Progress]: { readonly kind: Name; readonly args: Parameters<Progress[Name]> };
}[keyof Progress];

/** What the thread that does the work tells the one in front. */
export type Said =
  /** A study begins: with progress or `quiet`; `anyway`: without limits. */
  | { readonly kind: 'begin'; readonly quiet: boolean; readonly anyway: boolean }
  /** Units of the programme. */
  | { readonly kind: 'asked'; readonly units: number }
  /** So many letters at the beginning are the answer, which may be bold. */
  | { readonly kind: 'out' | 'error'; readonly text: string; readonly bold?: number }
  | Told
  /** What to say of what is left, if the work has to be ended in its midst. */
  | { readonly kind: 'kept'; readonly text: string }
  /** A process with a group of its own was started, or is gone. */
  | { readonly kind: 'process'; readonly pid: number; readonly isThere: boolean }
  | { readonly kind: 'code'; readonly code: ExitCode };

/** Why the one in front wants the work to stop. */
export type Stop =
  | { readonly kind: 'interrupt' }
  | { readonly kind: 'limit'; readonly message: string; readonly hint: string };

/** What the thread is given to begin with. */
export interface Given {
  readonly args: readonly string[];
  /** Width of the terminal; undefined where the answer goes to a file or a pipe. */
  readonly columns: number | undefined;
  readonly meter: SharedArrayBuffer;
}
