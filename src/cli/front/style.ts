import * as util from 'node:util';

type Env = Readonly<Record<string, string | undefined>>;

/**
 * Whether a stream takes bold letters: what `FORCE_COLOR` says, else no where `NO_COLOR` is set or the
 * terminal is a dumb one, else where it is a terminal (no-color.org; Node's `getColorDepth`).
 */
export function takesStyle(env: Env, isTerminal: boolean): boolean {
  const forced = env['FORCE_COLOR'];
  if (forced !== undefined) return ['', '1', '2', '3', 'true'].includes(forced);
  return takesCursor(env, isTerminal);
}

/** Whether lines may be written over: on a terminal that was not asked to be plain. */
export const takesCursor = (env: Env, isTerminal: boolean): boolean =>
  isTerminal && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb';

/** The first letters of a text in bold, line by line; as it is on a Node that has no such function. */
export function withBold(text: string, letters: number): string {
  if (!('styleText' in util)) return text;
  const bold = (line: string): string => (line === '' ? line : util.styleText('bold', line));
  return text.slice(0, letters).split('\n').map(bold).join('\n') + text.slice(letters);
}
