import { isInUse } from '../study/run/in-use.js';

/**
 * What the user can put right: the command line, a file, the scenario. Anything else that is thrown is a
 * fault of the program.
 */
export class UsageError extends Error {
  /**
   * `details` are lines to be printed above the message, `hint` is what to try, both without a full stop at
   * the end.
   */
  constructor(
    message: string,
    readonly hint?: string,
    readonly details: readonly string[] = [],
  ) {
    super(message);
  }
}

/**
 * Why a file or folder could not be had, in words, for an error of the operating system; undefined for any
 * other error.
 */
export function systemReason(
  error: unknown,
  platform: NodeJS.Platform = process.platform,
): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return undefined;
  const code = String(error.code);
  if (!isInUse(error, platform)) return REASONS[code] ?? `an error of the system, ${code}`;
  return code === 'EBUSY'
    ? 'one that another program has open'
    : 'no permission, or one that another program has open';
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'a folder',
  ENOTDIR: 'a file where a folder should be',
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'a file system that is read only',
  ENOSPC: 'no space left',
  EDQUOT: 'no space left',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'links that lead in a ring',
};
