import type { Path } from '../types/problem.js';

/**
 * How values of one kind of thing are called, by address below it: `*` for a name, `#` for a place in a list
 * (from 1). `@` stands for the thing, `{0}`, `{1}` .. for the names on the way.
 */
export type Rules = Readonly<Record<string, string>>;

/** What a chance says where it differs by option: after the address of the chance. */
export const chance = (address: string, words: string): Rules => {
  const names = address.split('.').filter((part) => part === '*').length;
  return {
    [address]: words,
    [`${address}.usual`]: words,
    [`${address}.*`]: `${words}, by {${names}}`,
    [`${address}.*.*`]: `${words} where {${names}} is {${names + 1}}`,
  };
};

interface Match {
  readonly words: string;
  /** Parts of the path that it has not spoken of. */
  readonly rest: Path;
}

/**
 * The words of the longest address that a path begins with. A number in the path where an address has none is
 * passed over: what may stand alone or in a list is called alike.
 */
export function matched(path: Path, rules: Rules, thing: string): Match | undefined {
  let best: (Followed & { readonly words: string }) | undefined;
  for (const [address, words] of Object.entries(rules)) {
    const found = follow(path, address === '' ? [] : address.split('.'));
    if (found !== undefined && (best === undefined || found.used > best.used || isCloser(found, best)))
      best = { ...found, words };
  }
  return best === undefined
    ? undefined
    : { words: filled(best.words, thing, best.names), rest: path.slice(best.used) };
}

interface Followed {
  /** Parts of the path, and of the address. */
  readonly used: number;
  readonly parts: number;
  readonly names: readonly string[];
}

/** Of two addresses that go as far, the longer says more, of equal ones that with fewer names of its own. */
const isCloser = (one: Followed, other: Followed): boolean =>
  one.used === other.used &&
  (one.parts > other.parts || (one.parts === other.parts && one.names.length < other.names.length));

function follow(path: Path, address: readonly string[]): Followed | undefined {
  const names: string[] = [];
  let used = 0;
  for (const part of address) {
    while (part !== '#' && typeof path[used] === 'number') used++;
    const here = path[used++];
    if (here === undefined) return undefined;
    if (part === '#') {
      if (typeof here !== 'number') return undefined;
      names.push(String(here + 1));
    } else if (part === '*') names.push(String(here));
    else if (part !== here) return undefined;
  }
  return { used, parts: address.length, names };
}

const filled = (words: string, thing: string, names: readonly string[]): string =>
  words.replaceAll(/\{(\d)\}/g, (_, n: string) => names[Number(n)] ?? '').replaceAll('@', () => thing);
