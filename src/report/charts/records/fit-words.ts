import type { StepResult } from '../../../study/fit/results.js';

/** Kinds of warnings as one says them; of options each is said. */
const SAID: Readonly<Record<Exclude<StepResult['warnings'][number]['kind'], 'option'>, string>> = {
  drift: 'times drift',
  'not independent': 'times in turn depend on each other',
  rounding: 'times are rounded',
  'two populations': 'two kinds of work seem mixed',
  'far from all others': 'odd times',
};

/** What speaks against the times of a step, a few words each; nothing where nothing does. */
export const warningWords = ({
  warnings,
  distribution,
  candidates,
  options,
  factors,
}: StepResult): string[] => [
  ...(distribution === 'observed values' && candidates.length > 0 && candidates.every(isRejected)
    ? ['no distribution fits']
    : []),
  ...new Set(warnings.flatMap(({ kind }) => (kind === 'option' ? [] : [SAID[kind]]))),
  ...factors.map(({ option }) => `depends on ${option}, written as a factor`),
  ...options
    .filter(({ option, isFelt }) => isFelt && factors.every((factor) => factor.option !== option))
    .map(({ option }) => `depends on ${option}, not written`),
];
const isRejected = ({ andersonDarling: { p } }: StepResult['candidates'][number]): boolean => p < 0.05;

/** ` as of cab short`, ` without the factor of colour`: where options were taken out. */
export const asOf = ({ factors, factorsKept }: StepResult): string =>
  (factors.length === 0
    ? ''
    : ` as of ${factors.map(({ option, usual }) => `${option} ${usual}`).join(', ')}`) +
  (factorsKept.length === 0 ? '' : ` without the factor of ${factorsKept.join(', ')}`);

/** `0.25`, `under 0.001`. */
export const pWords = (p: number): string => (p < 0.001 ? 'under 0.001' : String(Number(p.toPrecision(2))));
