import type { Results } from '../study/simulate/results.js';

/** Every exit code of the program. */
export const EXIT = { done: 0, fault: 1, usage: 2, finding: 3, interrupted: 130 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** The same, as the help shows them. */
export const EXIT_CODES_HELP = `Exit codes:
  ${EXIT.done}    done
  ${EXIT.fault}    a fault of rateproof itself; please report it
  ${EXIT.usage}    wrong use or wrong input; nothing was run
  ${EXIT.finding}    it ran to its end, but a finding stands, or what is asked is not held or not reached (--finding-ok: ${EXIT.done})
  ${EXIT.interrupted}  interrupted (Ctrl-C); no report was written`;

/** Whether what `simulate` found must not be overlooked in a script. */
export const stands = ({ answer, findings }: Results): boolean =>
  findings.length > 0 || answer.verdict === 'falls short';
