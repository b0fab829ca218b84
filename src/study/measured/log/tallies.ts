import type { CountRow } from '../../chances/chance.js';

/** Units that were looked at and those found, by the values of some options. */
export class Tallies {
  private readonly seen = new Map<
    string,
    { units: number; found: number; readonly options: CountRow['options'] }
  >();

  constructor(private readonly by: readonly string[]) {}

  add(options: Readonly<Record<string, string>>, isFound: boolean): void {
    const known = this.by.flatMap((option) => {
        const value = options[option];
        return value === undefined ? [] : [[option, value] as const];
      }),
      key = JSON.stringify(known),
      row = this.seen.get(key) ?? { units: 0, found: 0, options: Object.fromEntries(known) };
    this.seen.set(key, row);
    row.units++;
    if (isFound) row.found++;
  }

  rows(): readonly CountRow[] {
    return [...this.seen.values()];
  }
}
