import { UsageError } from '../usage-error.js';
import { type Option, withDefault } from './option.js';
import { reader } from './readers.js';

type Inputs = 'written' | 'uncertain';

/** Whether measured inputs are as written, or drawn anew from what was measured. */
export const INPUTS: Option<Inputs> = withDefault(
  '`uncertain`: measured inputs are drawn anew for every two replications; `written`: they stay',
  'written',
  reader(
    'written or uncertain',
    (option) => `for example ${option} uncertain, where the scenario has a basis such as { measured: 84 }`,
    (text): Inputs | undefined => (text === 'written' || text === 'uncertain' ? text : undefined),
  ),
);

/** Throws a UsageError for what cannot be had together with inputs that are drawn. */
export function checkInputs({
  inputs,
  replications,
  precision,
}: {
  readonly inputs: Inputs;
  readonly replications: number;
  readonly precision: object | undefined;
}): void {
  if (inputs === 'written') return;
  if (precision !== undefined)
    throw new UsageError(
      '--precision: expected no such option with --inputs uncertain, got it',
      'more replications make chance smaller, not what is unknown of the inputs; give --replications',
    );
  if (replications < 4 || replications % 2 === 1)
    throw new UsageError(
      `--replications: expected an even number of at least 4 with --inputs uncertain, got ${replications}`,
      'each draw of the inputs is used in two replications, so that input and chance can be told apart',
    );
}
