import { askedText } from '../../study/buffers/asked.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { capital, count, exact, number } from '../../study/format.js';
import { boundsOf, negated } from '../../study/statistics/estimate.js';
import { WITH_THEM } from '../constraint.js';
import { casesFirst } from './buffers-cases.js';
import { figure, range } from './figures.js';
import {
  about,
  ends,
  type FirstScreen,
  gain,
  gainBetween,
  how,
  INPUTS,
  type Line,
  sentences,
  together,
} from './first.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';
import { datesOf, placesLine } from './places.js';

export function buffersFirst(results: BufferResults): FirstScreen {
  if (results.cases !== undefined) return casesFirst(results, results.cases);
  const { scenario, answer, chosen, present, goal, zone, search, constraint } = results,
    places = count(chosen.total, 'waiting place'),
    isTarget = goal.kind === 'target',
    toToday = comparedWith(results),
    { brief, more } = placesLine(results, isTarget ? answer.verdict !== 'not settled' : toToday !== null);
  return {
    about: about(scenario),
    question: isTarget
      ? `How few waiting places does it need for ${askedText(results)}?`
      : `Where should up to ${count(goal.places, 'waiting place')} go?`,
    answer: isTarget
      ? {
          found: `${places}.`,
          reached: search.fewer === null ? `${places} found; fewer may do.` : `${places}.`,
          'not settled': `About ${places}; ${runsText(results)} runs would settle it.`,
          'not reached': 'Not reached with the layouts tried.',
          'out of reach': 'Out of reach, however many places.',
        }[answer.verdict]
      : toToday === null
        ? `Not settled: ${count(chosen.total, 'place')} may ship as much as today’s ${exact(present.total)}.`
        : `${count(chosen.total, 'place')} ${toToday}.`,
    sure: sure(results),
    stops: stopsLine(constraint, { of: WITH_THEM }),
    toDo: { brief, more: sentences(more, ...cheapestOf(results)) },
    when: datesOf(results),
    rests: weakestLine(results.weakest, WITH_THEM),
    next: { what: 'What else would help', command: `rateproof reliefs ${scenario.file}` },
    besides: sentences(
      `${tried(results)} A difference below ${number(100 * zone)} % does not matter here.`,
      'Whether there is floor space is not known.',
      INPUTS,
    ),
    picture: {
      title: 'The most that was found for each number of waiting places',
      more: `Grey: within ${number(100 * zone)} % of the best. The scale does not begin at 0.`,
    },
  };
}

const runsText = ({ answer: { toSettle } }: BufferResults): string =>
  toSettle === null ? 'more' : `about ${exact(toSettle)}`;

/** What they ship, against today, and what the whole budget would bring. */
function sure(results: BufferResults): Line {
  const { chosen, gain: against, goal, more, unit, level } = results,
    a = unit.replace(/^units( a) working/, '$1').replace(/^units/, '');
  const toToday = `${capital(gainBetween(against.difference, a))} than today`,
    rate = `With them ${ends(chosen.rate)} ${unit}`,
    sureness = ` (${how(level, chosen.rate.n)}).`,
    isTarget = goal.kind === 'target';
  return {
    brief: `${isTarget ? rate : toToday}${sureness}`,
    more: sentences(
      `${isTarget ? toToday : rate}.`,
      more === null
        ? ''
        : `${count(chosen.total + more.places, 'place')} would bring ${gain(more.difference)} than ` +
            exact(chosen.total) +
            (more.isSettled
              ? '.'
              : `; ${runsText(results)} simulated builds would settle whether that matters.`),
      together(level),
    ),
  };
}

/** How much was tried. */
function tried({ goal, search }: BufferResults): string {
  const count = goal.kind === 'budget' ? search.within : search.fewer,
    which = goal.kind === 'budget' ? 'within the budget' : 'with fewer places';
  return count === null ? 'Found by steps; nothing proves it the best.' : `All layouts ${which} were tried.`;
}

/** What a unit costs, and how much less in the cheapest layout found. */
function cheapestOf({ cheapest }: BufferResults): string[] {
  if (cheapest === null) return [];
  const { currency, verdict, cheapest: least } = cheapest;
  if (verdict === 'chosen' || verdict === 'as cheap')
    return ['No layout was found in which a unit costs noticeably less.'];
  if (verdict === 'not told apart' || least.dearer === null)
    return ['Whether a unit costs less in another layout is not settled.'];
  const saved = negated(least.dearer);
  return [
    `In the cheapest layout found, with ${count(least.total, 'waiting place')}, a unit costs ` +
      `${figure(saved)} ${currency} less (${range(saved)}).`,
  ];
}

/** By the whole interval of the difference to the layout as it is, and by what does not matter. */
function comparedWith({ gain: { difference }, present, zone }: BufferResults): string | null {
  const { low, high } = boundsOf(difference),
    matters = zone * present.rate.mean,
    today = `today’s ${exact(present.total)}`;
  if (low > matters) return `ship more than ${today}`;
  if (high < -matters) return `ship less than ${today}`;
  if (low >= -matters && high <= matters) return `ship as much as ${today}`;
  return null;
}
