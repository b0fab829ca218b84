import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { capital, count, exact } from '../../../study/format.js';
import { listed } from '../../../study/lists.js';
import { about, dateText, type FirstScreen, type Line, NO_LINE, restsOn, sentences } from '../first.js';
import { lastUnitLine, lastUnitText } from '../lines/last-unit.js';
import { behindText, dueOf, lateText, likelyLate, whereTheyStand } from './forecast-told.js';

/** Orders and places that are named; more would not be read at a glance. */
const MOST_NAMED = 3;

/** Which orders will be late, by how much, how sure. */
export function forecastFirst(results: ForecastResults): FirstScreen {
  const { scenario, at, time, log, units } = results,
    moment = dateText(at) + (time === null ? '' : ` at ${time}`),
    isDue = dueOf(results).length > 0;
  return {
    about: about(scenario),
    question: isDue
      ? `Which orders will be late, as the floor stands on ${moment}?`
      : `When will the orders be out, as the floor stands on ${moment}?`,
    answer: answer(results),
    sure: sure(results),
    stops: whichOnes(results),
    toDo: whereLine(results),
    // Without due days it is the answer.
    when: isDue ? lastUnitLine(datesOf(results), { plannedEnd: null }) : NO_LINE,
    rests: weakest(results),
    names: { stops: 'Which ones', toDo: 'Where' },
    next: {
      what: 'To try what would help, begin the scenario here',
      command:
        `rateproof opening ${scenario.file} ${log.file} --at ${at}${time === null ? '' : `T${time}`} ` +
        '--out opening.yaml',
    },
    besides:
      `${count(units.standing, 'unit')} on the floor, ${exact(units.shipped)} shipped, ` +
      `${exact(units.toCome)} to come in. Odds cover chance, not wrong inputs.`,
    picture: {
      title: isDue ? 'When each order is due, and when it is out' : 'When each order is out',
      more:
        'Bars: from the day in half of the builds to the day in four of five' +
        (isDue ? '; upright: end of the due day; hatched: likely late.' : '.'),
    },
  };
}

const datesOf = ({ lastUnit: { half, fourInFive } }: ForecastResults) => [
  { p: 0.5, date: half },
  { p: 0.8, date: fourInFive },
];

/** At most twelve words. */
function answer(results: ForecastResults): string {
  const due = dueOf(results),
    late = likelyLate(results),
    last = lastUnitText(datesOf(results));
  if (due.length === 0) return last === null ? 'Not all orders are out in the run.' : `Last unit by ${last}.`;
  if (due.length === 1)
    return `The one order with a due day is likely ${late.length === 1 ? 'late' : 'in time'}.`;
  return late.length === 0
    ? `None of ${exact(due.length)} orders with a due day is likely late.`
    : `${exact(late.length)} of ${exact(due.length)} orders with a due day will likely be late.`;
}

/** How many at once: orders of one build are late together. */
function sure(results: ForecastResults): Line {
  const { lateOrders, replications, lastUnit } = results,
    builds = count(replications, 'simulated build');
  if (lateOrders === null)
    return {
      brief:
        lastUnit.half === null
          ? `In half of the builds one is still inside at the end of the run (${builds}).`
          : `At even odds by ${dateText(lastUnit.half)} (${builds}).`,
      more: '',
    };
  const { half, fourInFive } = lateOrders;
  return {
    brief:
      fourInFive === 0
        ? `None late, four times in five (${builds}).`
        : `No more than ${exact(fourInFive)} late, four times in five (${builds}).`,
    more: sentences(
      fourInFive === 0 ? '' : `At even odds no more than ${exact(half)}.`,
      'An order is likely late if it is late in more than half of the builds.',
    ),
  };
}

/** `Order 207 (4 days, 20 of 20 builds)`. */
function whichOnes(results: ForecastResults): Line {
  const { orders, replications } = results,
    late = likelyLate(results),
    [next] = orders.filter((order) => (order.late ?? 0) > 0);
  const told = late.map((order) => `${order.unit} (${behindText(order)})`);
  if (dueOf(results).length === 0) return NO_LINE;
  if (told.length === 0)
    return {
      brief:
        next === undefined
          ? 'No order is late in any build.'
          : `Nearest to it: order ${next.unit}, late in ${lateText(next, replications)} builds.`,
      more: '',
    };
  const more = told.length - MOST_NAMED,
    certain = late.filter((order) => order.late === replications).length,
    least = late.at(-1),
    named = [...told.slice(0, MOST_NAMED), ...(more > 0 ? [`${exact(more)} more`] : [])];
  return {
    brief: `Order${told.length === 1 ? '' : 's'} ${named.join(', ')}.`,
    more: sentences(
      'In brackets: so late in half of the builds in which it is late.',
      certain === 0
        ? ''
        : `In all ${exact(replications)} builds ${exact(certain)} ${certain === 1 ? 'is' : 'are'} late.`,
      least === undefined || least.late === replications
        ? ''
        : `Least sure: order ${least.unit}, late in ${lateText(least, replications)}.`,
    ),
  };
}

/** Where they stand is known; what delays them was not tried. */
function whereLine(results: ForecastResults): Line {
  const late = likelyLate(results),
    places = whereTheyStand(late.length > 0 ? late : results.orders),
    shown = places.slice(0, MOST_NAMED).map(({ place, units }) => told(place, units.length)),
    left = places.slice(MOST_NAMED).reduce((sum, { units }) => sum + units.length, 0);
  if (places.length === 0) return NO_LINE;
  return {
    brief: `${capital(listed([...shown, ...(left > 0 ? [`${exact(left)} elsewhere`] : [])], 'and'))}.`,
    more: sentences(
      late.length > 0 ? 'Of the orders that are likely late.' : 'Of all orders.',
      'What delays them was not tried.',
    ),
  };
}

const told = (place: string, units: number): string =>
  place === 'not released' ? `${exact(units)} not released` : `${exact(units)} at ${place}`;

function weakest({ scenario, log, assumptions }: ForecastResults): Line {
  return {
    brief: 'That the model fits this floor.',
    more: sentences(
      `rateproof validate ${scenario.file} ${log.file} compares it with the log.`,
      restsOn(assumptions),
    ),
  };
}
