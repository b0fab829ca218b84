import type { Condition, RouteEntry } from '../types/steps.js';
import { possibleValues } from '../whole/placed.js';
import type { Scenario } from '../types/scenario.js';

/** A value for each option on which a condition of a route depends. */
export type Variety = Readonly<Record<string, string>>;

/** Where there are more varieties times entries than this, the first varieties stand for all. */
const MOST_VISITS = 1_000_000;

export const meets = (when: Condition, variety: Variety): boolean =>
  Object.entries(when).every(
    ([option, values]) => variety[option] === undefined || values.includes(variety[option]),
  );

/** Each combination of the options that the conditions of a route ask for. */
export function varietiesOf(scenario: Scenario, entries: readonly RouteEntry[]): Variety[] {
  const most = Math.max(1, Math.floor(MOST_VISITS / entries.length));
  let varieties: Variety[] = [{}];
  for (const option of new Set(entries.flatMap(({ when }) => Object.keys(when)))) {
    const values = possibleValues(scenario.programme.options, option, {});
    if (values.length === 0) continue;
    varieties = varieties
      .flatMap((variety) => values.map((value) => ({ ...variety, [option]: value })))
      .slice(0, most);
  }
  return varieties;
}
