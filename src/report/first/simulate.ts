import type { ConstraintResult } from '../../study/constraint/results.js';
import { capital, count, exact } from '../../study/format.js';
import { each, eachWorking, shippedOf } from '../../study/planners-unit.js';
import type { Results } from '../../study/simulate/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { toldConstraint } from '../constraint.js';
import { figure, range } from './figures.js';
import {
  AT_LEAST,
  about,
  COUNTS,
  DRAWN,
  dateText,
  ends,
  type FirstScreen,
  gainedText,
  how,
  INPUTS,
  type Line,
  NO_LINE,
  restsOn,
  roughly,
  sentences,
  shipIt,
  surely,
  whole,
} from './first.js';
import { begunWith, isEnough, ofMissing } from './lines/begin.js';
import { inputsTold, shippedText, shippedWithInputs } from './lines/inputs.js';
import { lastUnitLine } from './lines/last-unit.js';
import { whatItTakes } from './lines/offer.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';

export function simulateFirst(results: Results): FirstScreen {
  const { answer, scenario, rateUnit, assumptions } = results,
    { asked, verdict } = answer,
    shipped = shippedOf(results),
    rate = `${roughly(shipped, asked)} ${each(rateUnit)}`,
    found = toldConstraint(results),
    weakest = weakestLine(results.weakest),
    origins = restsOn(assumptions);
  return {
    about: about(scenario),
    question:
      asked === null
        ? 'How many units does it ship?'
        : `Can it ship ${exact(asked)} ${eachWorking(rateUnit)}${from(results)}?`,
    answer: {
      holds: `Yes, it holds: ${rate} shipped.`,
      'falls short': `No. Expect ${rate}, not ${asked === null ? '' : exact(asked)}.`,
      'not settled': `Not settled: ${rate} in what was tried.`,
      'no rate asked': `It ships ${rate}.`,
    }[verdict],
    sure: {
      brief: sure(results, shipped),
      more: sentences(inputsTold(results.inputs), (answer.keptUp?.count ?? 0) === 0 ? '' : COUNTS),
    },
    stops: stops(results, found),
    toDo: toDo(found, shipped, results),
    when: dates(results),
    rests: whole(weakest) === '' ? { brief: origins, more: '' } : weakest,
    next: next(results, found),
    besides: sentences(whole(weakest) === '' ? '' : origins, results.inputs === undefined ? INPUTS : DRAWN),
    picture: picture(results),
  };
}

/** From when on the rate is asked, where the plan has phases. */
function from({ programme: { phases }, answer: { askedPerDay } }: Results): string {
  const day = phases.length < 2 ? undefined : phases.find(({ perDay }) => perDay === askedPerDay)?.from;
  return day === undefined ? '' : ` from ${dateText(day)}`;
}

function sure({ answer: { keptUp, asked }, rateUnit, inputs }: Results, shipped: Estimate): string {
  const { n, level } = shipped,
    withInputs = shippedWithInputs(inputs);
  if (n === 0) return 'No build went on long enough to be counted.';
  if (withInputs !== undefined) {
    const text = shippedText(withInputs, rateUnit),
      atLeast = keptUp?.count === 0 ? '' : `${AT_LEAST} `;
    return keptUp === null || asked === null
      ? `${capital(text)}.`
      : `${capital(shipIt(keptUp))} ${atLeast}${exact(asked)} ${each(rateUnit)}; ${text}.`;
  }
  if (keptUp === null || asked === null)
    return `On average ${ends(shipped)} ${each(rateUnit)} (${how(level, n)}).`;
  const what = `${keptUp.count === 0 ? '' : `${AT_LEAST} `}${exact(asked)} ${each(rateUnit)}`;
  return `${capital(shipIt(keptUp))} ${what}; ` + `average ${ends(shipped)} (${surely(level)}).`;
}

/** A standstill first: nothing else matters as much. */
function stops({ findings, replications, standstill }: Results, found: ConstraintResult | null): Line {
  const stuck = findings.find(({ kind }) => kind === 'gridlock')?.replications ?? 0,
    line = stopsLine(found);
  if (stuck === 0) return line;
  return {
    brief:
      `In ${exact(stuck)} of ${count(replications, 'build')} units wait for each other for good.` +
      endText(standstill),
    more: whole(line),
  };
}

/** What ended the standstill in all builds in which it was tried. */
function endText(standstill: Results['standstill']): string {
  const help = standstill?.help ?? null,
    builds = help?.builds ?? 0,
    best = help?.tried.find(({ ends, of }) => ends === builds && of === builds);
  return best === undefined
    ? ''
    : ` With ${best.what} ${builds === 1 ? 'it goes' : `all ${exact(builds)} tried go`} on.`;
}

/** What was tried and helps, by how much of what is missing. */
function toDo(found: ConstraintResult | null, shipped: Estimate, results: Results): Line {
  const { asked, verdict } = results.answer,
    begun = begunWith(found, isEnough(shipped, asked)),
    isMissing = verdict === 'falls short' && asked !== null && results.rateUnit.per !== 'week';
  const brief =
    verdict === 'holds'
      ? 'Nothing has to be changed.'
      : verdict === 'not settled'
        ? 'Simulate more builds first.'
        : begun === undefined
          ? verdict === 'falls short'
            ? 'Find out what helps.'
            : 'Nothing: no rate is asked.'
          : isMissing
            ? `${begun.text}: ${ofMissing(begun, shipped, asked)}.`
            : `${asked === null ? 'to ship more, ' : ''}${begun.text}: ` +
              `${gainedText(begun.first.gain, ' a day')}${begun.forMoney}.`;
  return { brief: capital(brief), more: sentences(begun?.more ?? '', cost(results)) };
}

function next(
  { answer: { verdict }, scenario: { file }, replications }: Results,
  found: ReturnType<typeof toldConstraint>,
): FirstScreen['next'] {
  if (verdict === 'holds') return { what: 'How much more it would hold', command: `rateproof rate ${file}` };
  if (verdict === 'not settled')
    return {
      what: 'More builds may settle it',
      command: `rateproof simulate ${file} --replications ${4 * replications}`,
    };
  return (
    (verdict === 'falls short' ? whatItTakes(file, found?.tried) : null) ?? {
      what: 'What else would help',
      command: `rateproof reliefs ${file}`,
    }
  );
}

function dates({ lastUnit, programme, plan, units }: Results): Line {
  const planned = units.reduce((last, { due }) => (due !== null && due > last ? due : last), '');
  if (programme.kind !== 'programme') return NO_LINE;
  const plannedEnd = planned === '' ? (plan === null ? null : lastDue(plan)) : planned;
  return lastUnitLine(lastUnit, { plannedEnd });
}

/** The last day of the first week by whose end the plan has them all due. */
function lastDue({ due, ends }: NonNullable<Results['plan']>): string | null {
  const all = due?.at(-1),
    end = due === null || all === undefined || all === 0 ? undefined : ends[due.indexOf(all)];
  return end === undefined ? null : new Date(Date.parse(end) - 1).toISOString().slice(0, 10);
}

function cost({ costs }: Results): string {
  if (costs === null) return 'The scenario gives no prices.';
  const { perUnit, rework, currency } = costs;
  return (
    `A unit costs ${figure(perUnit)} ${currency} today (${range(perUnit)}); rework is ` +
    `${figure(rework.costPerUnit)} ${currency} of it.`
  );
}

/** Peaks and dips of weeks that are not like the others are no trend. */
function picture({ answer: { unusual, asked }, series: { unit } }: Results): FirstScreen['picture'] {
  return {
    title: `Units shipped a working day, by ${unit}${asked === null ? '' : ', against those asked'}`,
    more:
      unusual === null || unusual.weeks.length === 0
        ? ''
        : 'Peaks and dips where it is hatched: a holiday, a shutdown or an outage.',
  };
}
