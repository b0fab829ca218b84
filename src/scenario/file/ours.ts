import { nearest } from '../values/nearest.js';
import { isRawMap, mapOf } from '../values/raw.js';

/**
 * What a file is to be, so that nothing is quoted of one that is something else: a list of passwords, a key,
 * a letter. Somebody may read the message who may not read the file.
 */
export interface Ours {
  readonly wanted: string;
  /** Whether data may be one, perhaps with slips. */
  readonly isIn: (value: unknown) => boolean;
  /** The same of a text that YAML cannot read to its end. */
  readonly isInText: (text: string) => boolean;
}

/** Keys at the top of a scenario, or of a part of one, by which it is known; other files have notes too. */
export const SECTIONS = [
  'scenario',
  'programme',
  'calendars',
  'sites',
  'feeders',
  'supplies',
  'lanes',
  'carriers',
  'teams',
  'defects',
  'costs',
  'outages',
  'pulse lines',
  'levers',
  'measured',
  'route',
  'include',
];

/** One of these words, or what may be meant for one. */
const isLike = (key: string, words: readonly string[]): boolean =>
  words.includes(key) || nearest(key, words) !== undefined;
/** A key in the first column, or the first in a map on one line, without or with quotes. */
const KEY = /^(?:\s*\{\s*)?["']?([A-Za-z][A-Za-z ]{0,20}?)["']?[ \t]*:(?=\s|$)/gm;

const hasSection = (value: unknown): boolean =>
  isRawMap(value) &&
  (Object.keys(value).length === 0 || Object.keys(value).some((key) => isLike(key, SECTIONS)));
const saysSection = (text: string): boolean =>
  [...text.matchAll(KEY)].some(([, key = '']) => SECTIONS.includes(key));

export const A_SCENARIO: Ours = {
  wanted: 'a scenario: a map with the keys scenario, programme, sites and route',
  isIn: hasSection,
  isInText: saysSection,
};
export const A_PART: Ours = {
  ...A_SCENARIO,
  wanted: 'a map with parts of a scenario, such as sites or route',
};

/** What a what-if has, and how many there may be. */
export const CHANGES = 'changes: a list of path: new value, such as - sites.hall.stations.bench.places: 2';
export const MOST_WHAT_IFS = 50;
export const WHAT_IFS: Ours = {
  wanted: `a map of 1 to ${MOST_WHAT_IFS} what-ifs, each a name with ${CHANGES}`,
  isIn: (value) =>
    isRawMap(value) &&
    (Object.keys(value).length === 0 ||
      Object.values(value).some((entry) =>
        Object.keys(mapOf(entry)).some((key) => isLike(key, ['changes', 'note'])),
      )),
  isInText: (text) => /(?:^|[\s{,])["']?changes["']?[ \t]*:(?=\s|$)/m.test(text),
};

/** What is varied in a designed experiment. */
export const FACTORS: Ours = {
  wanted: 'factors: a map of 2 to 5 factors, each a name with change: path and levels: [value, value]',
  isIn: (value) =>
    isRawMap(value) &&
    (Object.keys(value).length === 0 || Object.keys(value).some((key) => isLike(key, ['factors', 'design']))),
  isInText: (text) => /^(?:\s*\{\s*)?["']?(?:factors|design)["']?[ \t]*:(?=\s|$)/m.test(text),
};
