import type { Scenario } from '../../../scenario/types/scenario.js';
import type { StepPlace } from '../../fit/places.js';
import { stepPlaces, timePlace } from '../places.js';

/**
 * Where times from start to end have their place in a scenario, by step: a log shows neither one pass of
 * several nor work apart from a process, and a process has no factors.
 * @param ofWork where clocked times of the work would stand
 */
export function logPlaces(
  scenario: Scenario,
  ofWork: (step: string) => StepPlace,
): (step: string) => StepPlace {
  const places = stepPlaces(scenario);
  return (step) => {
    const place = places.get(step),
      work = ofWork(step),
      other = { ...work, now: null, factorsNow: {}, written: () => [], notes: () => [] },
      none = (notWritten: string): StepPlace => ({
        ...other,
        path: null,
        notWritten,
        whyNot: () => 'the times have no place in the scenario',
      });
    if (place === undefined) return none('The scenario has no such step.');
    if (place.step.learning !== undefined)
      return none(
        'The step learns in the scenario: `--of learning` tells its rate and the time of the first unit.',
      );
    const at = timePlace(place, true);
    if (at.path === null) return none(at.why);
    return at.isProcess
      ? { ...other, path: at.path, notWritten: null, whyNot: () => 'a process takes no work factor' }
      : { ...work, path: at.path, notWritten: null };
  };
}
