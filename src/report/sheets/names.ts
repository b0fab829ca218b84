/** What Excel takes for the name of a sheet (its help, "Rename a worksheet"; from memory). */
const MOST_LETTERS = 31,
  FORBIDDEN = /[[\]:*?/\\]/g;

/** Names of sheets that Excel takes: no forbidden letter, short, and none twice, whatever its case. */
export class SheetNames {
  /** Excel keeps this one to itself. */
  private readonly taken = new Set(['history']);

  /** The name wanted, or the nearest that is free. */
  next(wanted: string): string {
    const name =
      wanted
        .replace(FORBIDDEN, ' ')
        .replace(/^'+|'+$/g, '')
        .trim() || 'sheet';
    for (let n = 1; ; n++) {
      const ending = n === 1 ? '' : ` (${n})`,
        free = cut(name, MOST_LETTERS - ending.length) + ending,
        key = free.toLowerCase();
      if (this.taken.has(key)) continue;
      this.taken.add(key);
      return free;
    }
  }
}

/** At most so many UTF-16 units, which Excel counts, and no half of a letter. */
function cut(name: string, most: number): string {
  let short = '';
  for (const letter of name) {
    if (short.length + letter.length > most) break;
    short += letter;
  }
  return short.replace(/[\s']+$/, '');
}
