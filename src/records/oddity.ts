/** What can be wrong with a row of the floor's own records. */
export type OddityKind =
  | 'no step'
  | 'no object'
  | 'no time'
  | 'unknown step'
  | 'unknown station'
  | 'unknown event'
  | 'unreadable number'
  | 'unreadable time'
  | 'time that the clock skips'
  | 'time that the clock shows twice'
  | 'time without a zone'
  | 'negative time'
  | 'no time at all'
  | 'overlap'
  | 'missing start'
  | 'missing end'
  | 'duplicate'
  | 'out of order'
  | 'far out of order'
  | 'too few columns'
  | 'far from all others'
  | 'no defect'
  | 'unknown defect'
  | 'unreadable answer'
  | 'more found than units'
  | 'no build number'
  | 'no station'
  | 'ends before it begins';

/** What became of the rows: used all the same, used after a change, not used, or the whole file refused. */
export type OddityRule = 'taken as it is' | 'mended' | 'left out' | 'refused';

/** Rows with one thing wrong: nothing is dropped without being counted here. */
export interface Oddity {
  readonly kind: OddityKind;
  readonly rule: OddityRule;
  readonly count: number;
  /** Line numbers of the first of them, as in the file; the head is line 1. */
  readonly lines: readonly number[];
  /** What the first of them says. */
  readonly example: string;
  /** One plain sentence: what is wrong, and what became of them. */
  readonly told: string;
}

/** A row that is not used. */
export interface LeftOutRow {
  /** As in the file; the head is line 1. */
  readonly line: number;
  readonly why: OddityKind;
  /** What stands there, as far as it matters. */
  readonly says: string;
}

/** So many lines are shown of each kind; so many rows that are left out are kept, and so much of each. */
const SHOWN = 5,
  MOST_ROWS = 10_000,
  MOST_LETTERS = 200;

/** Counts what is wrong, by kind, in the order in which kinds are first seen. */
export class Oddities {
  private readonly seen = new Map<
    OddityKind,
    { -readonly [K in keyof Oddity]: Oddity[K] } & { lines: number[] }
  >();

  /** Rows that are not used, of very many the first. */
  readonly leftOut: LeftOutRow[] = [];

  /** @param told what is wrong and the rule, as one sentence; that of the first row is kept */
  add(
    kind: OddityKind,
    rule: OddityRule,
    line: number,
    example: string,
    told: string | (() => string),
  ): void {
    if (rule === 'left out' && this.leftOut.length < MOST_ROWS)
      this.leftOut.push({ line, why: kind, says: example.slice(0, MOST_LETTERS) });
    const known = this.seen.get(kind);
    if (known === undefined) {
      const says = typeof told === 'string' ? told : told();
      this.seen.set(kind, { kind, rule, count: 1, lines: [line], example, told: says });
      return;
    }
    known.count++;
    if (known.lines.length < SHOWN) known.lines.push(line);
  }

  list(): readonly Oddity[] {
    return [...this.seen.values()];
  }
}
