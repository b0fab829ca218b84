import { capital, exact } from '../../study/format.js';
import { each, inUnit, rateText } from '../../study/planners-unit.js';
import type { RateResults } from '../../study/rate/results.js';
import {
  AT_LEAST,
  about,
  COUNTS,
  type FirstScreen,
  INPUTS,
  type Line,
  NO_LINE,
  sentences,
  shipIt,
} from './first.js';
import { begunWith } from './lines/begin.js';
import { lastUnitLine } from './lines/last-unit.js';
import { whatItTakes } from './lines/offer.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';

export function rateFirst(results: RateResults): FirstScreen {
  const { scenario, answer, rateUnit, plannedPerDay, constraint, weakest, lastUnit, plannedEnd } = results,
    { highestPerDay } = answer,
    isAbove = highestPerDay === null || plannedPerDay > highestPerDay,
    planned = exact(inUnit(plannedPerDay, rateUnit)),
    begun = begunWith(constraint),
    plan = isAbove && highestPerDay !== null ? 'plan for it' : '',
    more = begun === undefined ? '' : `${isAbove ? '' : 'to ship more, '}${begun.text}`,
    tried = constraint === null ? '' : `at ${rateText(constraint.perDay, rateUnit)}`,
    out =
      highestPerDay === null
        ? NO_LINE
        : lastUnitLine(lastUnit, { of: `at ${rateText(highestPerDay, rateUnit)}`, plannedEnd });
  return {
    about: about(scenario),
    question: `What rate can it promise? The plan says ${planned} ${each(rateUnit)}.`,
    answer:
      highestPerDay === null
        ? 'None of the rates tried holds.'
        : `Promise ${rateText(highestPerDay, rateUnit)}${isAbove ? `, not ${planned}` : ''}.`,
    sure: sure(results),
    stops: stopsLine(constraint, { of: 'above that', at: `tried ${tried}` }),
    toDo: {
      brief: `${capital([plan, more].filter((each) => each !== '').join('; to ship more, ') || NOTHING)}.`,
      more: sentences(begun?.more ?? '', 'This study does not look at what a unit costs.'),
    },
    when: ramped(out, results),
    rests: weakestLine(weakest, tried),
    next: isAbove
      ? (whatItTakes(scenario.file, constraint?.tried) ?? {
          what: 'What would raise it',
          command: `rateproof reliefs ${scenario.file}`,
        })
      : { what: 'Whether fewer waiting spaces would do', command: `rateproof buffers ${scenario.file}` },
    besides: INPUTS,
    picture: {
      title: 'What is shipped at each rate that was tried',
      more: 'On the dashed line as many are shipped as are asked.',
    },
  };
}

const NOTHING = 'nothing has to be changed';

/** With the week from which on the rate may be asked, where that is not from the start. */
function ramped({ brief, more }: Line, { ramp: { outcome, sentence } }: RateResults): Line {
  const ramp = outcome === 'from the start' || outcome === 'no ramp' ? '' : sentence;
  return brief === '' ? { brief: ramp, more: '' } : { brief, more: sentences(more, ramp) };
}

/** How many builds ship the rate, and whether another study would name it. */
function sure({ answer: { highestPerDay, spread }, points, rateUnit }: RateResults): Line {
  const best = points.find(({ perDay }) => perDay === highestPerDay),
    rate = (perDay: number | null): string => (perDay === null ? 'none' : exact(inUnit(perDay, rateUnit))),
    again =
      spread.low === spread.high
        ? `${tenths(spread.share)} would say the same`
        : `${tenths(spread.share)} would say ${rate(spread.low)} to ${rate(spread.high)} ${each(rateUnit)}`;
  return {
    brief: sentences(
      best === undefined || highestPerDay === null ? '' : `${capital(shipIt(best.keptUp))} ${AT_LEAST} it.`,
      `${again}.`,
    ),
    more: `${COUNTS} No study was repeated: that is an estimate, by drawing again from the builds run.`,
  };
}

const tenths = (share: number): string => `${exact(Math.round(10 * share))} in 10 such studies`;
