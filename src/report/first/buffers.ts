import type { BufferResults } from '../../study/buffers/results.js';
import { count, exact, number } from '../../study/format.js';
import { boundsOf } from '../../study/statistics/estimate.js';
import { between, type FirstScreen, gain, how } from './first.js';

export function buffersFirst(results: BufferResults): FirstScreen {
  const {
      scenario,
      answer,
      chosen,
      present,
      gain: against,
      goal,
      currency,
      zone,
      more,
      unit,
      spots,
    } = results,
    places = count(chosen.total, 'waiting place'),
    isTarget = goal.kind === 'target';
  return {
    question: isTarget
      ? `How few waiting places does “${scenario.name}” need for ${number(goal.rate)} ${unit}?`
      : `Where does “${scenario.name}” best put up to ${count(goal.places, 'waiting place')}?`,
    answer: isTarget
      ? {
          found: `${places}.`,
          reached: `${places}, found so far.`,
          'not settled': `About ${places}; more runs would settle it.`,
          'not reached': 'Not reached with the places tried.',
          'out of reach': 'Out of reach, however many places.',
        }[answer.verdict]
      : `${places} ship ${comparedWith(results)} today’s ${exact(present.total)}.`,
    sure:
      `With them ${between(chosen.rate)} ${unit} (${how(chosen.rate)}); against today ` +
      `${gain(against.difference)}.` +
      (more === null
        ? ''
        : ` ${count(more.places, 'place')} more would bring ${gain(more.difference)}` +
          `${more.isSettled ? '' : ', which more runs would settle'}.`),
    why: null,
    toDo:
      spots.map(({ name, chosen: many, present: now }) => `${name}: ${many} (today ${now})`).join('; ') + '.',
    whenAndCost:
      chosen.costPerDay === null || present.costPerDay === null
        ? ['The scenario gives a waiting place no price.']
        : [
            `Their floor costs ${number(chosen.costPerDay)} ${currency ?? ''} a day; today’s ` +
              `${number(present.costPerDay)}.`,
          ],
    rests:
      `Found by moving one place at a time; nothing proves it the best. A difference below ` +
      `${number(100 * zone)} % does not matter. Whether there is floor space is not known.`,
  };
}

/** By the whole interval of the difference to the layout as it is, and by what does not matter. */
function comparedWith({ gain: { difference }, present, zone }: BufferResults): string {
  const { low, high } = boundsOf(difference),
    matters = zone * present.rate.mean;
  if (low > matters) return 'more than';
  if (high < -matters) return 'less than';
  return low >= -matters && high <= matters ? 'as much as' : 'about as much as';
}
