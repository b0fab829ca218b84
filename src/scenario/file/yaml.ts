import { Composer, type CST, Lexer, LineCounter, Parser } from 'yaml';
import type { Finding, Path, Problem } from '../types/problem.js';
import { withPlainLines } from '../values/marks.js';
import { exact } from '../values/thousands.js';
import { DEEPEST, plainOf, spotKey, tooDeepAt } from './plain.js';
import { sayPath } from './problem.js';

export interface Parsed {
  /** Undefined if the text could not be parsed to the end. */
  readonly value: unknown;
  /** What YAML itself finds wrong. */
  readonly problems: readonly Problem[];
  /** The problems are of its syntax, in the words of the parser, which quotes the text. */
  readonly isQuoted: boolean;
  /** Adds file and line to what was found wrong later. */
  readonly place: (finding: Finding) => Problem;
}

/** Characters; a large scenario has some tens of thousands. */
export const LONGEST_TEXT = 1_000_000;
/** One slip makes YAML report many lines; the first ones say it. */
const MOST_SYNTAX_PROBLEMS = 20;

/**
 * Reads YAML 1.2 (and so JSON) to plain data. Never throws: whatever is wrong is in `problems`. A text means
 * the same however its lines end.
 */
export function parseYaml(written: string, file: string): Parsed {
  const text = withPlainLines(written);
  const lines = new LineCounter();
  const at = (offset: number, path: Path, wanted: string, seen?: string): Problem => {
    const { line, col } = lines.linePos(Math.max(0, offset));
    return {
      file,
      line: Math.max(1, line),
      column: Math.max(1, col),
      path: sayPath(path),
      wanted,
      seen,
      suggestion: undefined,
    };
  };
  const tooDeep = (offset: number): Problem =>
    at(offset, [], `maps and lists at most ${DEEPEST} deep`, 'a deeper one');
  const stop = (problems: readonly Problem[], isQuoted = false): Parsed => ({
    value: undefined,
    problems,
    isQuoted,
    place: (finding) => at(0, finding.path, finding.wanted, finding.seen),
  });

  if (text.length > LONGEST_TEXT)
    return stop([at(0, [], `a text of at most ${exact(LONGEST_TEXT)} characters`, exact(text.length))]);
  const bad = Math.max(text.indexOf('\uFFFD'), text.indexOf('\0'));
  const { tokens, deep: deepest } = tokensOf(text, lines);
  if (deepest !== undefined && !(bad >= 0 && bad < deepest)) return stop([tooDeep(deepest)]);
  if (bad >= 0) return stop([at(bad, [], 'UTF-8 text; save the file as UTF-8', 'a character that is not')]);
  for (const token of tokens) {
    const deep = tooDeepAt(token);
    if (deep !== undefined) return stop([tooDeep(deep)]);
  }

  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'silent',
    resolveKnownTags: false,
  });
  const documents = [...composer.compose(tokens, true, text.length)];
  const [document, second] = documents;
  const faults = documents.slice(0, 1).flatMap((d) => [...d.errors, ...d.warnings]);
  const syntax = faults
    .slice(0, MOST_SYNTAX_PROBLEMS)
    .map((e) => at(e.pos[0], [], `valid YAML: ${plainWords(e.message)}`));
  if (second !== undefined) syntax.push(at(second.range[0], [], 'one document in a file', 'a second one'));
  if (syntax.length === 0 && (document === undefined || document.contents === null))
    return stop([at(0, [], 'a scenario', 'an empty file')]);
  if (syntax.length > 0 || document === undefined) return stop(syntax, true);

  const plain = plainOf(document.contents);
  const place = (finding: Finding): Problem => {
    const { path, wanted, seen, suggestion, source } = finding;
    const spot = spotOf(path, plain.spots);
    const problem = at(finding.atKey === true ? (spot.key ?? spot.value) : spot.value, path, wanted, seen);
    return { ...problem, suggestion, ...source };
  };
  return {
    value: plain.value,
    isQuoted: false,
    problems: plain.faults.map((f) => at(f.offset, f.path, f.wanted, f.seen)),
    place,
  };
}

/**
 * The tokens of a text. The parser closes what is open by recursion, which could exhaust the stack: where far
 * too much is open it is left, and `deep` is the offset of the first token that nests too deep.
 */
function tokensOf(
  text: string,
  { addNewLine }: LineCounter,
): { readonly tokens: readonly CST.Token[]; readonly deep?: number } {
  const parser = new Parser(addNewLine),
    tokens: CST.Token[] = [];
  addNewLine(0);
  for (const lexeme of new Lexer().lex(text)) {
    tokens.push(...parser.next(lexeme));
    if (parser.stack.length > 2 * DEEPEST) return { tokens, deep: parser.stack[DEEPEST + 1]?.offset ?? 0 };
  }
  tokens.push(...parser.end());
  return { tokens };
}

/** Of the path itself, or of what is nearest around it. */
function spotOf(
  path: Path,
  spots: ReturnType<typeof plainOf>['spots'],
): { key: number | undefined; value: number } {
  for (let length = path.length; length >= 0; length--) {
    const spot = spots.get(spotKey(path.slice(0, length)));
    if (spot !== undefined)
      return length < path.length && spot.key !== undefined ? { key: spot.key, value: spot.key } : spot;
  }
  return { key: 0, value: 0 };
}

function plainWords(message: string): string {
  const line = message.split('\n')[0] ?? message;
  return (line.charAt(0).toLowerCase() + line.slice(1)).replace(/\.$/, '');
}
