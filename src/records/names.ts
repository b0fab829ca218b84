import { nearest } from '../scenario/values/nearest.js';

/** What the log calls things, and what the scenario calls them: the planner keeps it in a file. */
export interface Mapping {
  readonly steps?: Readonly<Record<string, string>> | undefined;
  readonly stations?: Readonly<Record<string, string>> | undefined;
  readonly options?: Readonly<Record<string, string>> | undefined;
  readonly defects?: Readonly<Record<string, string>> | undefined;
}

/** Options and defects of an event by the planner's mapping; the same object where nothing is mapped. */
export function mappedBy({ options = {}, defects = {} }: Mapping = {}) {
  const keys = new Map(Object.entries(options)),
    kinds = new Map(Object.entries(defects));
  return (values: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
    keys.size + kinds.size === 0
      ? values
      : Object.fromEntries(
          Object.entries(values).map(([key, value]) => [
            keys.get(key) ?? key,
            key === 'defect' ? (kinds.get(value) ?? value) : value,
          ]),
        );
}

/** A name that the scenario does not have, and on how many rows it stands. */
export interface UnknownName {
  readonly name: string;
  readonly count: number;
  /** The nearest name of the scenario. */
  readonly near: string | undefined;
}

/** So many different names are remembered: a log with more has numbers in the column. */
const MOST_NAMES = 10_000;

/** One sort of names of the scenario, as the log writes them. */
export class Names {
  private readonly known: ReadonlySet<string> | undefined;
  private readonly mapped: ReadonlyMap<string, string>;
  /** By text of the log: the name, undefined if there is none. */
  private readonly seen = new Map<string, string | undefined>();
  private readonly unknown = new Map<string, number>();

  /** @param known undefined: any name will do */
  constructor(known: Iterable<string> | undefined, mapping: Readonly<Record<string, string>> = {}) {
    this.known = known === undefined ? undefined : new Set(known);
    this.mapped = new Map(Object.entries(mapping));
  }

  /**
   * Of the scenario, after the planner's mapping; undefined: there is none, and it is counted. Texts that are
   * asked for are kept.
   */
  of(text: string): string | undefined {
    const name = this.seen.get(text) ?? (this.seen.has(text) ? undefined : this.look(text));
    if (name !== undefined) return name;
    const count = this.unknown.get(text);
    if (count !== undefined || this.unknown.size < MOST_NAMES) this.unknown.set(text, (count ?? 0) + 1);
    return undefined;
  }

  private look(text: string): string | undefined {
    const name = this.mapped.get(text) ?? text,
      known = this.known === undefined || this.known.has(name) ? name : undefined;
    if (this.seen.size < MOST_NAMES) this.seen.set(text, known);
    return known;
  }

  near(text: string): string | undefined {
    return this.known === undefined ? undefined : nearest(this.mapped.get(text) ?? text, this.known);
  }

  /** `, did you mean "prime"?`, or a full stop. */
  hint(text: string): string {
    const near = this.near(text);
    return near === undefined ? '.' : `, did you mean "${near}"?`;
  }

  /** The most frequent first. */
  unknownNames(): UnknownName[] {
    return Array.from(this.unknown, ([name, count]) => ({ name, count, near: this.near(name) })).sort(
      (a, b) => b.count - a.count,
    );
  }
}
