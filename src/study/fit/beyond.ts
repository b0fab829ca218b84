import { own } from '../../scenario/values/raw.js';
import { type TakenOut, takenOut, type WorkFactor } from './factors.js';

/** Factors that a scenario has on the work of a step: by option and value. */
export type FactorsNow = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Times with what options do to them taken out, also by what the scenario has. */
export interface BeyondScenario extends TakenOut {
  /** Options whose factors of the scenario were taken out and stay in it. */
  readonly kept: readonly string[];
}

/**
 * Factors of the options that matter beyond those that the scenario has: the times are divided by these
 * first. Where the table does not contradict them they stay; where it does, those of the table take their
 * place, and values that the table does not have keep theirs.
 * @param options those that may have a factor
 */
export function beyondScenario(
  times: readonly number[],
  by: Readonly<Record<string, readonly string[]>>,
  options: readonly string[],
  now: FactorsNow,
): BeyondScenario {
  const said = options.filter((option) => Object.hasOwn(now, option)),
    factorOf = (option: string, value: string): number => own(own(now, option) ?? {}, value) ?? 1,
    rows = times.flatMap((_, i) => (said.every((option) => by[option][i] !== '') ? [i] : []));
  const found = takenOut(
      rows.map((i) => said.reduce((time, option) => time / factorOf(option, by[option][i]), times[i])),
      Object.fromEntries(Object.entries(by).map(([option, values]) => [option, rows.map((i) => values[i])])),
      options,
    ),
    scale = found.factors.reduce((product, { option, usual }) => product * factorOf(option, usual), 1);
  const together = ({ option, usual, factors }: WorkFactor): WorkFactor => {
    const one = factorOf(option, usual),
      asNow = Object.entries(own(now, option) ?? {}).filter(([value]) => value !== usual),
      asFound = Object.entries(factors).map(
        ([value, factor]) => [value, (factor * factorOf(option, value)) / one] as const,
      );
    return {
      ...{ option, usual },
      factors: Object.fromEntries([
        ...asNow.map(([value, factor]) => [value, factor / one] as const),
        ...asFound,
      ]),
    };
  };
  return {
    ...found,
    factors: found.factors.map(together),
    times: found.times.map((time) => time * scale),
    rows: found.rows.map((row) => rows[row]),
    kept: said.filter((option) => found.factors.every((factor) => factor.option !== option)),
  };
}
