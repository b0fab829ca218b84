import type { Finding, Path } from '../types/problem.js';
import type { Basis, Measured } from '../types/scenario.js';
import { nearest } from '../values/nearest.js';
import { chanceOf, isDate } from '../values/quantity.js';
import { isRawMap, type RawMap } from '../values/raw.js';
import { exact } from '../values/thousands.js';
import { sayPath, saySeen } from './problem.js';

export const BASES: readonly Basis[] = ['measured', 'estimate', 'guess'];

/** What a basis says; undefined where it says nothing that is known. */
export interface BasisRead {
  readonly basis: Basis | undefined;
  readonly measured: Measured | undefined;
  readonly findings: readonly Finding[];
}

const MOST = 1_000_000_000;
const WORDS = `one of ${BASES.map((word) => `"${word}"`).join(', ')}`;
const KEYS = ['measured', 'found', 'standard error', 'from', 'to', 'file'] as const;
type Key = (typeof KEYS)[number];

/**
 * Reads a basis: a word, or of measured values a map with their number: `{ measured: 84, from: 2027-08-16,
 * to: 2027-10-29, file: times.csv }`; of a chance also how many were found, `{ measured: 412, found: 17 }`.
 * @param at where the basis stands
 */
export function readBasis(raw: unknown, at: Path): BasisRead {
  if (isRawMap(raw)) return readMap(raw, at);
  const basis = BASES.find((word) => word === raw);
  if (basis !== undefined) return { basis, measured: undefined, findings: [] };
  const suggestion = typeof raw === 'string' ? nearest(raw, BASES) : undefined;
  return {
    basis: undefined,
    measured: undefined,
    findings: [{ path: at, wanted: WORDS, seen: saySeen(raw), suggestion }],
  };
}

function readMap(map: RawMap, at: Path): BasisRead {
  const findings: Finding[] = Object.keys(map)
    .filter((key) => !(KEYS as readonly string[]).includes(key))
    .map((key) => ({
      path: [...at, key],
      wanted: `one of the keys ${KEYS.join(', ')}`,
      seen: JSON.stringify(key),
      suggestion: nearest(key, KEYS),
      atKey: true,
    }));
  /** The value of a key if it is right; what is wrong with it is told. */
  const read = <T>(key: Key, isRight: (value: unknown) => value is T, wanted: string): T | undefined => {
    if (!Object.hasOwn(map, key)) return undefined;
    const value = map[key];
    if (isRight(value)) return value;
    findings.push({ path: [...at, key], wanted, seen: saySeen(value) });
    return undefined;
  };
  const isWhole =
    (least: number, most: number) =>
    (value: unknown): value is number =>
      Number.isInteger(value) && (value as number) >= least && (value as number) <= most;
  const isDay = (value: unknown): value is string => typeof value === 'string' && isDate(value);
  const DAY = 'a day of the calendar, such as "2027-03-01"';
  if (!Object.hasOwn(map, 'measured'))
    findings.push({
      path: at,
      wanted: 'measured with the number of values behind it, such as { measured: 84 }',
      seen: saySeen(map),
    });
  const n = read<number>('measured', isWhole(1, MOST), `a whole number from 1 to ${exact(MOST)}`),
    mostFound = n ?? MOST,
    found = read<number>(
      'found',
      isWhole(0, mostFound),
      `a whole number from 0 to ${n === undefined ? exact(MOST) : `the ${exact(n)} measured`}`,
    ),
    standardError = read<number>(
      'standard error',
      (value): value is number => typeof value === 'number' && value > 0 && value <= 10,
      'a number greater than 0, at most 10',
    ),
    from = read<string>('from', isDay, DAY),
    to = read<string>('to', isDay, DAY),
    file = read<string>(
      'file',
      (value): value is string => typeof value === 'string' && value.trim() !== '',
      'the name of a file',
    );
  if (from !== undefined && to !== undefined && to < from)
    findings.push({ path: [...at, 'to'], wanted: `a day that is not before ${from}`, seen: saySeen(to) });
  if (n === undefined || findings.length > 0) return { basis: 'measured', measured: undefined, findings };
  return { basis: 'measured', measured: { n, found, standardError, from, to, file }, findings };
}

/** Of a value's path; the section `measured` has one as one key. */
export const isLearningRate = (at: Path): boolean => /(?:^|[.\]])learning\.rate$/.test(sayPath(at));

/** A chance as written lies no further from what was found, at least this or a tenth of it: it is rounded. */
const ROUNDED = 0.005;

/**
 * What is wrong with counts beside a value: `found` tells of a chance, which must be about that share, and
 * `standard error` of a chance that is no share of a count, or of the rate of a learning.
 * @param at path of the value, `basisAt` that of its basis
 * @param value as written; a map or a list is no single value
 */
export function countFindings(
  { n, found, standardError }: Measured,
  value: unknown,
  at: Path,
  basisAt: Path,
): Finding[] {
  const share = typeof value === 'number' ? value : typeof value === 'string' ? chanceOf(value) : undefined,
    isRate = isLearningRate(at),
    findings: Finding[] = [];
  if (found !== undefined) {
    const of = found / n;
    if (share === undefined || share > 1)
      findings.push({
        path: [...basisAt, 'found'],
        wanted: 'a chance that it tells of, such as { value: 4 %, basis: { measured: 412, found: 17 } }',
        seen: saySeen(value),
        atKey: true,
      });
    else if (Math.abs(share - of) > Math.max(ROUNDED, of / 10))
      findings.push({
        path: [...basisAt, 'found'],
        wanted:
          `as many as the chance says, ${exact(Math.round(share * n))} of ${exact(n)}; or a chance of ` +
          `${Number((100 * of).toPrecision(3))} %`,
        seen: exact(found),
      });
  }
  // That of a rate is of its logarithm, that of a chance of the chance, which a half at most can be.
  if (standardError !== undefined && !isRate && !(share !== undefined && share <= 1 && standardError <= 0.5))
    findings.push({
      path: [...basisAt, 'standard error'],
      wanted:
        'the rate of a learning beside it, of whose slope on a log scale it is; or a chance, of which it ' +
        'is 0.5 at most',
      seen: saySeen(value),
      atKey: true,
    });
  return findings;
}
