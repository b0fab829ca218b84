import type { ConstraintResult } from '../../study/constraint/results.js';
import { capital, count, exact, number } from '../../study/format.js';
import { each, eachWorking, shippedOf } from '../../study/planners-unit.js';
import type { Results } from '../../study/simulate/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { eachShift, toldConstraint } from '../constraint.js';
import { figure, range } from './figures.js';
import {
  asking,
  between,
  dateText,
  type FirstScreen,
  how,
  INPUTS,
  restsOn,
  roughly,
  sentences,
  shipIt,
  whyText,
} from './first.js';
import { lastUnitText, planSays } from './last-unit.js';
import { beginWith, whatItTakes } from './offer.js';
import { weakestText } from './weakest.js';

export function simulateFirst(results: Results): FirstScreen {
  const { answer, scenario, rateUnit, assumptions } = results,
    { asked, verdict } = answer,
    shipped = shippedOf(results),
    a = each(rateUnit),
    rate = `${roughly(shipped, asked)} ${a}`,
    found = toldConstraint(results),
    weakest = weakestText(results.weakest),
    origins = restsOn(assumptions);
  return {
    question: asking(
      scenario,
      asked === null
        ? `How many units does “${scenario.name}” ship?`
        : `Can “${scenario.name}” ship ${exact(asked)} ${eachWorking(rateUnit)}${from(results)}?`,
    ),
    answer: {
      holds: `Yes, it holds: ${rate} shipped.`,
      'falls short': `No. Expect ${rate}, not ${asked === null ? '' : exact(asked)}.`,
      'not settled': `Not settled: ${rate} in what was tried.`,
      'no rate asked': `It ships ${rate}.`,
    }[verdict],
    sure:
      shipped.n === 0
        ? 'No build went on long enough to be counted.'
        : `On average ${between(shipped)} ${a} (${how(shipped)}).${keptUp(results)}`,
    why: why(results, found),
    toDo: toDo(found, asked, shipped, results),
    next: next(results, found),
    whenAndCost: [...dates(results), ...cost(results)],
    rests: weakest || origins,
    besides: sentences(weakest === '' ? '' : origins, INPUTS),
    picture: picture(results),
  };
}

/** From when on the rate is asked, where the plan has phases. */
function from({ programme: { phases }, answer: { askedPerDay } }: Results): string {
  const day = phases.length < 2 ? undefined : phases.find(({ perDay }) => perDay === askedPerDay)?.from;
  return day === undefined ? '' : ` from ${dateText(day)}`;
}

function keptUp({ answer: { keptUp: seen } }: Results): string {
  if (seen === null) return '';
  return ` ${capital(shipIt(seen))} what is asked.`;
}

/** A standstill first: nothing else matters as much. */
function why({ findings, replications, standstill }: Results, found: ConstraintResult | null): string | null {
  const stuck = findings.find(({ kind }) => kind === 'gridlock')?.replications ?? 0,
    stands =
      stuck === 0
        ? null
        : `In ${exact(stuck)} of ${count(replications, 'build')} units wait for each other for good.` +
          endText(standstill);
  const texts = [stands, found === null ? null : whyText(found)].filter((text) => text !== null);
  return texts.length === 0 ? null : texts.join(' ');
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

function toDo(
  found: ConstraintResult | null,
  asked: number | null,
  shipped: Estimate,
  { answer, rateUnit }: Results,
): string {
  if (answer.verdict !== 'falls short' || found?.culprit == null) return '';
  if (asked === null || rateUnit.per === 'week') return '';
  const { what, gain: more, offer } = found.culprit,
    missing = number(Number((asked - shipped.mean).toPrecision(2))),
    [least, most] = [(shipped.low ?? NaN) + (more.low ?? NaN), (shipped.high ?? NaN) + (more.high ?? NaN)],
    enough =
      most < asked
        ? ', not enough alone'
        : least >= asked
          ? ', enough alone'
          : '; whether that is enough alone is not settled';
  return (
    `${capital(beginWith(eachShift(what, found), offer))}: it closes ${figure(more)} of ` +
    `the ${missing} a day that are missing${enough}.`
  );
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

function dates({ lastUnit, programme, plan, units }: Results): string[] {
  const out = lastUnitText(lastUnit),
    planned = units.reduce((last, { due }) => (due !== null && due > last ? due : last), '');
  if (programme.kind !== 'programme' || out === null) return [];
  const by = planned === '' ? (plan === null ? null : lastDue(plan)) : planned;
  return [`Last unit out ${out}${planSays(by, lastUnit)}.`];
}

/** The last day of the first week by whose end the plan has them all due. */
function lastDue({ due, ends }: NonNullable<Results['plan']>): string | null {
  const all = due?.at(-1),
    end = due === null || all === undefined || all === 0 ? undefined : ends[due.indexOf(all)];
  return end === undefined ? null : new Date(Date.parse(end) - 1).toISOString().slice(0, 10);
}

function cost({ costs }: Results): string[] {
  if (costs === null) return ['The scenario gives no prices.'];
  const { perUnit, rework, currency } = costs;
  return [
    `A unit costs ${figure(perUnit)} ${currency} today (${range(perUnit)}); rework is ` +
      `${figure(rework.costPerUnit)} ${currency} of it.`,
  ];
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
