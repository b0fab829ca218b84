import type { Read } from './reader.js';

/** How a case ended: a fault has its words. */
export type Verdict =
  | { readonly kind: 'accepted' | 'refused' | 'run' | 'skipped'; readonly why?: string }
  | { readonly kind: 'failed'; readonly why: string };

export const failed = (why: string): Verdict => ({ kind: 'failed', why });
const shortly = (text: string): string =>
  JSON.stringify(text.length > 300 ? `${text.slice(0, 300)}...` : text);

/**
 * Controls besides the line break, marks of the direction of writing, separators: Unicode's general
 * categories. The isolates are ours, around names written from the right.
 */
// eslint-disable-next-line no-control-regex -- controls are what is looked for
const RAW = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066\u2067\ufeff]/,
  ISOLATED = /\u2068[^\u2068\u2069\n]*\u2069/g;

/** What a terminal would act on in a text that was printed. */
export function rawMark(text: string): string | undefined {
  const [mark] = RAW.exec(text) ?? /[\u2068\u2069]/.exec(text.replace(ISOLATED, '')) ?? [];
  return mark === undefined ? undefined : `U+${(mark.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`;
}

const PROBLEM = /^[^\t\n]+:[1-9]\d*:[1-9]\d* [^\t\n]*[^\t\n.]$/,
  POOR = /invalid input|unrecognized|too (small|big):|\bundefined\b|\[object/i;

/** A line for a planner: where it is, in one line, what is wanted. */
function faultOfProblem(problem: string): string | undefined {
  if (!PROBLEM.test(problem)) return `a problem that is no line with file:line:column: ${shortly(problem)}`;
  const said = problem.replace(/; (got|did you mean) .*$/, '');
  return POOR.test(said) ? `a problem not worded for planners: ${shortly(problem)}` : undefined;
}

/** What is demanded of a scenario that was read in a process of its own. */
export function judgeRead({ end, stage, problems = [], error = '', seconds }: Read): Verdict {
  switch (end) {
    case 'accepted':
    case 'run':
      return { kind: end };
    case 'unplanned':
      return { kind: 'refused' };
    case 'refused': {
      const fault =
        problems.length === 0 ? 'refused without a problem' : problems.map(faultOfProblem).find(Boolean);
      return fault === undefined ? { kind: 'refused' } : failed(fault);
    }
    case 'too long':
    case 'no memory':
      if (stage === 'run') return { kind: 'skipped', why: end };
      return failed(`${stage}: ${end}, ${Math.round(seconds)} s`);
    case 'thrown':
    case 'died':
      return failed(`${stage}: ${error}`);
  }
}

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  /** It was ended after so many seconds. */
  readonly tooLong: boolean;
}

/** What is demanded of the program as a process. `mayBeLong`: what was asked may be much. */
export function judgeProcess({ code, stdout, stderr, tooLong }: Outcome, mayBeLong: boolean): Verdict {
  if (tooLong) return mayBeLong ? { kind: 'skipped', why: 'too long' } : failed(`no end: ${shortly(stderr)}`);
  if (
    /heap out of memory|Array buffer allocation failed|Invalid (typed )?array( buffer)? length/.test(stderr)
  )
    return { kind: 'skipped', why: 'no memory' };
  if (code !== 0 && code !== 2 && code !== 3) return failed(`exit code ${code}: ${stderr.slice(0, 3000)}`);
  for (const [name, text] of Object.entries({ stdout, stderr })) {
    const mark = rawMark(text);
    if (mark !== undefined) return failed(`a raw ${mark} in ${name}: ${shortly(text)}`);
  }
  if (code !== 2) return { kind: 'accepted' };
  const said = /(?:^|\n)error: [^\n]+\n(?:hint: [^\n]+\n)?$/.exec(stderr);
  if (said === null) return failed(`no error line at the end: ${shortly(stderr.slice(-300))}`);
  if (/^error: \d+ problems? in /m.test(stderr)) {
    const lines = stderr.slice(0, said.index).split('\n'),
      fault = lines
        .filter((line) => !/^and \d+ more$|^found \d+ |^running /.test(line))
        .map(faultOfProblem)
        .find(Boolean);
    if (fault !== undefined) return failed(fault);
  }
  return { kind: 'refused' };
}
