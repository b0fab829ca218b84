import type { Find } from './scenario.js';

/** Whether what is found may be noted and left open: carried on, or passed on at the limit of a loop. */
export const makesNote = ({ then }: Find): boolean =>
  then.kind === 'carry' || (then.kind === 'back' && then.atLimit === 'pass');
