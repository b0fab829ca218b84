import { askedText } from '../../study/buffers/asked.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { capital, count, exact, number } from '../../study/format.js';
import { boundsOf } from '../../study/statistics/estimate.js';
import { figure, range } from './figures.js';
import { between, type FirstScreen, gain, howTogether, INPUTS, noted } from './first.js';

export function buffersFirst(results: BufferResults): FirstScreen {
  const { scenario, answer, chosen, gain: against, goal, zone, more, unit, spots, level, search } = results,
    places = count(chosen.total, 'waiting place'),
    isTarget = goal.kind === 'target',
    runs = answer.toSettle === null ? 'more' : `about ${exact(answer.toSettle)}`,
    a = unit.replace(/^units/, '');
  return {
    question: isTarget
      ? `How few waiting places does “${scenario.name}” need for ${askedText(results)}?`
      : `Where does “${scenario.name}” best put up to ${count(goal.places, 'waiting place')}?`,
    answer: isTarget
      ? {
          found: `${places}.`,
          reached: search.fewer === null ? `${places} found; fewer may do.` : `${places}.`,
          'not settled': `About ${places}; ${runs} runs would settle it.`,
          'not reached': 'Not reached with the layouts tried.',
          'out of reach': 'Out of reach, however many places.',
        }[answer.verdict]
      : `${places} ${comparedWith(results)}.`,
    sure:
      `With them ${between(chosen.rate)} ${unit} (${howTogether(chosen.rate, level)}): ` +
      `${gain(against.difference, a)} than today.` +
      (more === null
        ? ''
        : ` ${capital(count(chosen.total + more.places, 'place'))} would bring ` +
          `${figure(more.difference)} more (${range(more.difference)})` +
          `${more.isSettled ? '' : '; whether that matters is not settled'}.`),
    why: null,
    toDo:
      capital(
        spots.map(({ name, chosen: many, present: now }) => `${name}: ${many} (today ${now})`).join('; '),
      ) + '. Do all of it or none: parts of it were not tried.',
    next: { what: 'What stops it was not looked for here', command: `rateproof simulate ${scenario.file}` },
    whenAndCost: [...floor(results), 'Dates are in the report of simulate.'],
    rests:
      `${noted(scenario)}${tried(results)} A difference ` +
      `below ${number(100 * zone)} % does not matter here. Whether there is floor space is not known. ` +
      INPUTS,
    picture: {
      title: 'The most that was found for each number of waiting places',
      more: 'The scale does not begin at 0.',
    },
  };
}

/** How much was tried. */
function tried({ goal, search }: BufferResults): string {
  const count = goal.kind === 'budget' ? search.within : search.fewer,
    which = goal.kind === 'budget' ? 'within the budget' : 'with fewer places';
  return count === null ? 'Found by steps; nothing proves it the best.' : `All layouts ${which} were tried.`;
}

function floor({ chosen, present, currency }: BufferResults): string[] {
  if (chosen.costPerDay === null || present.costPerDay === null)
    return ['The scenario gives a waiting place no price.'];
  return [
    `Floor for the ${exact(chosen.total)} costs ${number(chosen.costPerDay)} ${currency ?? ''} a day, for ` +
      `today’s ${exact(present.total)} ${number(present.costPerDay)} ${currency ?? ''}; what the move ` +
      'costs is not known here.',
  ];
}

/** By the whole interval of the difference to the layout as it is, and by what does not matter. */
function comparedWith({ gain: { difference }, present, zone }: BufferResults): string {
  const { low, high } = boundsOf(difference),
    matters = zone * present.rate.mean,
    today = `today’s ${exact(present.total)}`;
  if (low > matters) return `ship more than ${today}`;
  if (high < -matters) return `ship less than ${today}`;
  if (low >= -matters && high <= matters) return `ship as much as ${today}`;
  return `ship about what ${today} do; not settled`;
}
