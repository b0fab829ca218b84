import type { Scenario } from '../../../scenario/types/scenario.js';
import { stepPlaces, timePlace } from '../places.js';

/** Where times from start to end have their place in a scenario, by step; null, and why, where none. */
export function logPlaces(
  scenario: Scenario,
): (
  step: string,
) => { readonly path: string; readonly notWritten: null } | { path: null; notWritten: string } {
  const places = stepPlaces(scenario);
  return (step) => {
    const place = places.get(step),
      none = (notWritten: string) => ({ path: null, notWritten });
    if (place === undefined) return none('The scenario has no such step.');
    if (place.step.learning !== undefined)
      return none(
        'The step learns in the scenario: `--of learning` tells its rate and the time of the first unit.',
      );
    const at = timePlace(place, true);
    return at.path === null ? none(at.why) : { path: at.path, notWritten: null };
  };
}
