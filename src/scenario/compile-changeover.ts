import { NO_DRAW, type Draws } from './compile-draws.js';
import { found, type Names } from './compile-names.js';
import { own } from './cross-routes.js';
import type { Changeover, Scenario } from './scenario.js';

export interface ChangeoverRow {
  readonly option: number;
  /** By value before * values + value after. */
  readonly draws: readonly number[];
  readonly batch: Changeover['batch'];
}

/** One draw for all pairs of values that take the usual time, and one for each pair with a time of its own; nothing for what neither takes time nor chooses. */
export function compileChangeover(
  scenario: Scenario,
  station: string,
  changeover: Changeover | undefined,
  names: Names,
  draws: Draws,
): ChangeoverRow | undefined {
  if (changeover === undefined) return undefined;
  const { option, work, fromTo, batch } = changeover;
  const usual = draws.add(`${station}/changeover`, work);
  const values = Object.keys(scenario.programme.options[option]);
  const byPair = values.flatMap((from) =>
    values.map((to) => {
      if (from === to) return NO_DRAW;
      const time = own(own(fromTo, from) ?? {}, to);
      return time === undefined ? usual : draws.add(`${station}/changeover ${from} to ${to}`, time);
    }),
  );
  if (batch === undefined && byPair.every((draw) => draw === NO_DRAW)) return undefined;
  return { option: found(names.option, option, 'option'), draws: byPair, batch };
}
