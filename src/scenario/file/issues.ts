import type { z } from 'zod';
import type { Finding, Path } from '../types/problem.js';
import { KNOWN_KEYS } from '../values/keys.js';
import { nearest } from '../values/nearest.js';
import { valueAt } from '../values/raw.js';
import { saySeen } from './problem.js';

type Issue = z.core.$ZodIssue;
/** What our own refinements say beside their message. */
type Params = Partial<Pick<Finding, 'seen' | 'suggestion' | 'source'>>;

/** What zod found wrong in a value, in our words: the messages of the schema say what would be right. */
export function findingsOf(issues: readonly Issue[], value: unknown): Finding[] {
  return withoutEchoes(issues.flatMap((issue) => ofIssue(issue, [], value)));
}

function ofIssue(issue: Issue, around: Path, root: unknown): Finding[] {
  const path = [...around, ...(issue.path as (string | number)[])];
  const seen = valueAt(root, path);
  switch (issue.code) {
    case 'invalid_union':
      return ofUnion(issue.errors as Issue[][], issue.message, path, root);
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey([...path, key], issue.message));
    case 'invalid_key':
      return [
        {
          path,
          wanted: issue.issues[0]?.message ?? issue.message,
          seen: JSON.stringify(path.at(-1)),
          atKey: true,
        },
      ];
    case 'invalid_value':
      return [
        wanted(
          path,
          issue.message,
          seen,
          typeof seen === 'string' ? nearest(seen, issue.values.map(String)) : undefined,
        ),
      ];
    case 'custom': {
      const { params = {} } = issue as { params?: Params };
      const shown = 'seen' in params || issue.message.startsWith('missing;') ? params.seen : saySeen(seen);
      return [
        { path, wanted: issue.message, seen: shown, suggestion: params.suggestion, source: params.source },
      ];
    }
    default:
      return [wanted(path, issue.message, seen)];
  }
}

function wanted(path: Path, text: string, seen: unknown, suggestion?: string): Finding {
  return seen === undefined
    ? { path, wanted: `missing; should be ${text}` }
    : { path, wanted: text, seen: saySeen(seen), suggestion };
}

function unknownKey(path: Path, text: string): Finding {
  const key = String(path.at(-1));
  return {
    path,
    wanted: text,
    seen: JSON.stringify(key),
    suggestion: nearest(key, knownKeys(text)),
    atKey: true,
  };
}

const knownKeys = (text: string): string[] =>
  text.startsWith(KNOWN_KEYS) ? text.slice(KNOWN_KEYS.length).split(', ') : [];

/**
 * Of the ways to write a value, the one that the planner most likely meant is explained; if none, all are
 * named.
 */
function ofUnion(branches: readonly Issue[][], text: string, path: Path, root: unknown): Finding[] {
  const scores = branches.map((issues) => strangeness(issues, path, root));
  const least = Math.min(...scores);
  const seen = valueAt(root, path);
  if (least === Infinity || isEmptyMap(seen)) {
    const words = branches
      .flat()
      .flatMap((issue) =>
        issue.code === 'invalid_value' && issue.path.length === 0 ? issue.values.map(String) : [],
      );
    return [wanted(path, text, seen, typeof seen === 'string' ? nearest(seen, words) : undefined)];
  }
  const meant = branches[scores.indexOf(least)] ?? [];
  const strange = meant.filter((issue) => issue.code === 'unrecognized_keys' && issue.path.length === 0);
  if (strange.length === 0) return meant.flatMap((issue) => ofIssue(issue, path, root));

  // A key that no branch knows may belong to any of them, and what then seems missing is only misspelt.
  const known = new Set(
    branches.flat().flatMap((issue) => (issue.path.length === 0 ? knownKeys(issue.message) : [])),
  );
  const allKnown = `${KNOWN_KEYS}${[...known].join(', ')}`;
  return meant.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys' && issue.path.length === 0) {
      return issue.keys.map((key) =>
        known.has(key) ? wanted(path, text, seen) : unknownKey([...path, key], allKnown),
      );
    }
    return isMissing(issue, path, root) ? [] : ofIssue(issue, path, root);
  });
}

/** A key too many speaks louder than one still missing. */
const STRANGE_KEY = 1.5;

/**
 * How far a value is from one way of writing it: Infinity for another kind of value, else by keys too many or
 * missing.
 */
function strangeness(issues: readonly Issue[], path: Path, root: unknown): number {
  let score = 0;
  for (const issue of issues) {
    if (issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'invalid_value'))
      return Infinity;
    if (issue.path.length === 0 && issue.code === 'invalid_union')
      score += Math.min(...(issue.errors as Issue[][]).map((errors) => strangeness(errors, path, root)));
    else if (issue.code === 'unrecognized_keys' && issue.path.length === 0)
      score += STRANGE_KEY * issue.keys.length;
    else score += isMissing(issue, path, root) ? 1 : 0.01;
  }
  return score;
}

const isMissing = (issue: Issue, path: Path, root: unknown): boolean =>
  issue.path.length === 1 && valueAt(root, [...path, ...(issue.path as (string | number)[])]) === undefined;

/** A key said to be missing is not, if its misspelling is suggested in the same map. */
function withoutEchoes(findings: readonly Finding[]): Finding[] {
  const meant = new Set(
    findings.flatMap(({ atKey, path, suggestion }) =>
      atKey === true && suggestion !== undefined ? [JSON.stringify([...path.slice(0, -1), suggestion])] : [],
    ),
  );
  return findings.filter(({ path }) => !meant.has(JSON.stringify(path)));
}

const isEmptyMap = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && Object.keys(value).length === 0;
