import type fc from 'fast-check';
import type { Verdict } from './demands.js';
import type { Reader } from './reader.js';

/** Content of the files that show a case, by name; and what to give the program. */
export type Shown = Readonly<Record<string, string | Buffer>>;

/** One kind of what is tried. A case is plain data, so that it can be made smaller. */
export interface Kind<Case> {
  readonly name: string;
  readonly cases: fc.Arbitrary<Case>;
  /** Cases of a batch: a batch has a seed of its own. */
  readonly batch: number;
  readonly judge: (made: Case, reader: Reader) => Promise<Verdict>;
  /** What a person needs to try it again. */
  readonly show: (made: Case) => Shown;
}
/** A kind, whatever its cases are. */
export type AnyKind = Kind<never>;
