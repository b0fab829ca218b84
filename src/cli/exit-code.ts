/** Every exit code of the program. */
export const EXIT = { done: 0, fault: 1, usage: 2, finding: 3, interrupted: 130 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

const MEANINGS: Readonly<Record<keyof typeof EXIT, string>> = {
  done: 'done',
  fault: 'a fault of rateproof itself; please report it',
  usage: 'wrong use or wrong input; nothing was run',
  finding:
    'it ran to its end, but a finding stands, or what is asked is not held or not reached ' +
    `(--finding-ok: ${EXIT.done})`,
  interrupted: 'interrupted (Ctrl-C); no report was written',
};

/** The same, as the help shows them. */
export const EXIT_CODES_HELP = [
  'Exit codes:',
  ...Object.entries(EXIT).map(
    ([kind, code]) => `  ${String(code).padEnd(4)} ${MEANINGS[kind as keyof typeof EXIT]}`,
  ),
].join('\n');
