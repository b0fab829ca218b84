import type { Path, Problem } from '../types/problem.js';

/** One line for the terminal: `file:line:column path: wanted; got seen; did you mean "suggestion"?` */
export function sayProblem(problem: Problem): string {
  const { file, line, column, path, wanted, seen, suggestion } = problem;
  return (
    `${file}:${line}:${column} ${path === '' ? '' : `${path}: `}${wanted}` +
    (seen === undefined ? '' : `; got ${seen}`) +
    (suggestion === undefined ? '' : `; did you mean "${suggestion}"?`)
  );
}

/** `['route', 3, 'crew']` -> `route[3].crew` */
export function sayPath(path: Path): string {
  return path
    .map((part, i) => (typeof part === 'number' ? `[${part}]` : i === 0 ? part : `.${part}`))
    .join('');
}

const LONGEST_SEEN = 60;

/** A value as shown after "got": texts in quotes, long ones cut, maps and lists by kind. */
export function saySeen(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (value === null) return 'nothing';
  if (typeof value === 'string')
    return JSON.stringify(value.length > LONGEST_SEEN ? `${value.slice(0, LONGEST_SEEN)}...` : value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value !== 'object') return `a ${typeof value}`;
  const keys = Object.keys(value);
  if (keys.length === 0) return 'an empty map';
  const shown = keys.slice(0, 4).join(', ');
  return shown.length > LONGEST_SEEN
    ? `a map of ${keys.length} keys`
    : `a map of ${shown}${keys.length > 4 ? ' and more' : ''}`;
}

/** By file (that of the scenario first), line, column; the same problem at the same spot only once. */
export function sortProblems(problems: readonly Problem[], file: string): readonly Problem[] {
  const rank = (p: Problem): number => (p.file === file ? 0 : 1);
  const byFile = (a: Problem, b: Problem): number =>
    rank(a) - rank(b) || (a.file < b.file ? -1 : a.file > b.file ? 1 : 0);
  const sorted = [...problems].sort((a, b) => byFile(a, b) || a.line - b.line || a.column - b.column);
  const said = new Set<string>();
  return sorted.filter((problem) => {
    const text = sayProblem(problem);
    if (said.has(text)) return false;
    said.add(text);
    return true;
  });
}
