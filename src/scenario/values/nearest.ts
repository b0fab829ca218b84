const LONGEST_WORD = 80;

/**
 * Edits (insert, delete, replace, swap of neighbours) from one word to another: the optimal string alignment
 * distance (Damerau 1964, Levenshtein 1966).
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row: number[] = [];
    let left = Infinity,
      aboveLeft = Infinity;
    for (const [j, above] of last.entries()) {
      const same = j > 0 && a.charAt(i - 1) === b.charAt(j - 1);
      let best = Math.min(above + 1, left + 1, aboveLeft + (same ? 0 : 1));
      if (i > 1 && j > 1 && a.charAt(i - 1) === b.charAt(j - 2) && a.charAt(i - 2) === b.charAt(j - 1))
        best = Math.min(best, (beforeLast[j - 2] ?? Infinity) + 1);
      row.push(best);
      left = best;
      aboveLeft = above;
    }
    beforeLast = last;
    last = row;
  }
  return last.at(-1) ?? 0;
}

/**
 * The known word nearest to a misspelt one, or undefined if none is near: at most a third of its letters (at
 * least one) may differ; capitals, spaces, hyphens and underscores count for nothing. The first of equals.
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]+/g, ' ');
  const target = plain(word);
  const allowed = Math.max(1, Math.floor(target.length / 3));
  let found: string | undefined;
  let least = allowed + 1;
  for (const candidate of known) {
    if (candidate === word || Math.abs(candidate.length - word.length) > allowed + 1) continue;
    const distance = editDistance(target, plain(candidate));
    if (distance < least) {
      least = distance;
      found = candidate;
    }
  }
  return found;
}
