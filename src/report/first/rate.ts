import { exact } from '../../study/format.js';
import { each, inUnit, rateText } from '../../study/planners-unit.js';
import type { RateResults } from '../../study/rate/results.js';
import { onEveryShift } from '../constraint.js';
import { asking, type FirstScreen, INPUTS, sentences, shipIt, whyText } from './first.js';
import { lastUnitText, planSays } from './last-unit.js';
import { beginWith, whatItTakes } from './offer.js';
import { weakestText } from './weakest.js';

export function rateFirst(results: RateResults): FirstScreen {
  const { scenario, answer, points, rateUnit, plannedPerDay, constraint, ramp, weakest } = results,
    { highestPerDay, spread } = answer,
    a = each(rateUnit),
    isAbove = highestPerDay === null || plannedPerDay > highestPerDay,
    planned = exact(inUnit(plannedPerDay, rateUnit)),
    culprit = constraint?.culprit,
    best = points.find(({ perDay }) => perDay === highestPerDay);
  return {
    question: asking(scenario, `What rate can “${scenario.name}” promise? The plan says ${planned} ${a}.`),
    answer:
      highestPerDay === null
        ? 'None of the rates tried holds.'
        : `Promise ${rateText(highestPerDay, rateUnit)}${isAbove ? `, not ${planned}` : ''}.`,
    sure:
      (best === undefined
        ? ''
        : `At that rate ${shipIt(best.keptUp, 'simulated build')} what is asked, to within 2 %. `) +
      (spread.low === spread.high
        ? `${tenths(spread.share)} such studies would name the same rate.`
        : `${tenths(spread.share)} such studies would name ${rates(spread.low)} to ` +
          `${rates(spread.high)} ${a}.`),
    why:
      constraint === null
        ? null
        : whyText(constraint, `above that, tried at ${rateText(constraint.perDay, rateUnit)},`),
    toDo: sentences(
      isAbove && highestPerDay !== null ? `Plan for ${rateText(highestPerDay, rateUnit)}.` : '',
      culprit == null ? '' : `To ship more, ${beginWith(onEveryShift(culprit.what), culprit.offer)}.`,
    ),
    next: isAbove
      ? (whatItTakes(scenario.file, constraint?.tried) ?? {
          what: 'What would raise it',
          command: `rateproof reliefs ${scenario.file}`,
        })
      : { what: 'Whether fewer waiting spaces would do', command: `rateproof buffers ${scenario.file}` },
    whenAndCost: [
      ...dates(results),
      ...(ramp.outcome === 'from the start' || ramp.outcome === 'no ramp' ? [] : [ramp.sentence]),
      'This study does not look at what a unit costs.',
    ],
    rests: weakestText(
      weakest,
      undefined,
      constraint === null ? undefined : ` at ${rateText(constraint.perDay, rateUnit)}`,
    ),
    besides: INPUTS,
    picture: {
      title: 'What is shipped at each rate that was tried',
      more: 'On the dashed line as many are shipped as are asked.',
    },
  };

  function rates(perDay: number | null): string {
    return perDay === null ? 'none' : exact(inUnit(perDay, rateUnit));
  }
}

function dates({ answer: { highestPerDay }, lastUnit, plannedEnd, rateUnit }: RateResults): string[] {
  const out = lastUnitText(lastUnit);
  return highestPerDay === null || out === null
    ? []
    : [
        `At ${rateText(highestPerDay, rateUnit)} the last unit is out ` +
          `${out}${planSays(plannedEnd, lastUnit)}.`,
      ];
}

const tenths = (share: number): string => `${exact(Math.round(10 * share))} of 10`;
