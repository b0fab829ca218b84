import { exact, number } from '../../study/format.js';
import { each, inUnit, rateText } from '../../study/planners-unit.js';
import type { RateResults } from '../../study/rate/results.js';
import { type FirstScreen, whyText } from './first.js';

export function rateFirst(results: RateResults): FirstScreen {
  const { scenario, answer, points, rateUnit, plannedPerDay, constraint, ramp, arithmetic, sure } = results,
    { highestPerDay, spread } = answer,
    a = each(rateUnit),
    isAbove = highestPerDay === null || plannedPerDay > highestPerDay,
    planned = exact(inUnit(plannedPerDay, rateUnit)),
    best = points.find(({ perDay }) => perDay === highestPerDay);
  return {
    question: `What rate can “${scenario.name}” promise? The plan says ${planned} ${a}.`,
    answer:
      highestPerDay === null
        ? 'None of the rates tried holds.'
        : `Promise ${rateText(highestPerDay, rateUnit)}${isAbove ? `, not ${planned}` : ''}.`,
    sure:
      (best === undefined
        ? ''
        : `At that rate ${exact(best.keptUp.count)} of ${exact(best.keptUp.n)} builds keep up. `) +
      (spread.low === spread.high
        ? `${tenths(spread.share)} such studies would say the same.`
        : `${tenths(spread.share)} such studies would say ${rates(spread.low)} to ` +
          `${rates(spread.high)} ${a}.`),
    why: constraint === null ? null : `Above that: ${whyText(constraint)}`,
    toDo: isAbove
      ? `rateproof reliefs ${scenario.file} tries what would raise it, with gains and costs.`
      : `rateproof buffers ${scenario.file} shows whether fewer spaces would do.`,
    whenAndCost: [ramp.sentence],
    rests:
      `A rate holds if surely at least ${number(100 * sure)} % of the builds keep up. ` +
      (arithmetic === null
        ? ''
        : `Averages alone would allow ${number(inUnit(arithmetic.perDay, rateUnit))} ${a} ` +
          `(${arithmetic.name}).`),
  };

  function rates(perDay: number | null): string {
    return perDay === null ? 'none' : exact(inUnit(perDay, rateUnit));
  }
}

const tenths = (share: number): string => `${exact(Math.round(10 * share))} of 10`;
