import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { bounds, capital, count, exact, intervalAndCount, mean, number } from '../format.js';
import { type CountingResult, countedText, countingResult, slowestText } from '../loads/words.js';
import { daysInOne, each, eachWorking, inUnit, type PlannersUnit, plannersUnit } from '../planners-unit.js';
import type { Window } from '../programme/judged-window.js';
import type { RateJudged } from '../programme/rate-held.js';
import type { Sample } from '../sample/sample.js';
import { type Estimate, mapped } from '../statistics/estimate.js';
import { type UnusualWeeks, unusualClause } from './unusual-weeks.js';

/**
 * The rate asked at its highest, units per working day, and what was shipped per working day while it was
 * asked for.
 */
export interface Answer extends Pick<RateJudged, 'verdict' | 'askedPerDay' | 'heldPerDay'> {
  readonly sentence: string;
  /** The same in the planner's unit, see `rateUnit`. */
  readonly asked: number | null;
  readonly held: Estimate | null;
  readonly window: Pick<Window, 'from' | 'to'> | null;
  /** Weeks of the window that are not like the others; null without a window. */
  readonly unusual: UnusualWeeks | null;
  /** How units shipped in the window were counted; null without one. */
  readonly counting: CountingResult | null;
}

function inPlannersUnit(
  unit: PlannersUnit,
  { askedPerDay, heldPerDay, window }: RateJudged,
): Pick<Answer, 'asked' | 'held'> {
  return {
    asked: askedPerDay === null ? null : inUnit(askedPerDay, unit),
    held: heldPerDay === null ? null : mapped(heldPerDay, (perDay) => perDay * daysInOne(unit, window)),
  };
}

/** The answer, in one sentence that begins with it. */
export function answer(
  sample: Sample,
  judged: RateJudged,
  throughputPerDay: Estimate,
  unusual: UnusualWeeks | null,
): Answer {
  const { verdict, askedPerDay, heldPerDay, window } = judged,
    clauses = [
      sentence(sample, judged, throughputPerDay),
      unusual === null ? null : unusualClause(unusual, 'judged'),
    ];
  return {
    verdict,
    askedPerDay,
    heldPerDay,
    ...inPlannersUnit(plannersUnit(sample.scenario), judged),
    window: window === null ? null : { from: window.from, to: window.to },
    unusual,
    counting: counted(judged),
    sentence: `${capital(clauses.filter((clause) => clause !== null).join('; '))}.`,
  };
}

/** What falls short, without its cause: `four a day is not held: ...`. */
export function shortfallClause(sample: Sample, judged: RateJudged): string {
  const unit = plannersUnit(sample.scenario),
    { asked } = inPlannersUnit(unit, judged),
    { gridlocks, heldPerDay } = judged,
    figures = heldPerDay === null || asked === null ? null : shippedWhile(judged, unit);
  const parts = [
    ...(gridlocks > 0 ? [standstill(sample, gridlocks)] : []),
    ...(figures === null ? [] : [figures]),
  ];
  return `${rate(asked, unit)} is not held: ${parts.join('; ')}`;
}

function sentence(sample: Sample, judged: RateJudged, throughputPerDay: Estimate): string {
  const { askedPerDay, shortfall, window, leadMinutes } = judged,
    unit = plannersUnit(sample.scenario),
    asked = rate(inPlannersUnit(unit, judged).asked, unit);
  switch (judged.verdict) {
    case 'no rate asked': {
      const shipped = `no rate is asked: ${shippedText(throughputPerDay, unit)} over the whole run`;
      return judged.gridlocks > 0 ? `${shipped}; ${standstill(sample, judged.gridlocks)}` : shipped;
    }
    case 'falls short':
      return shortfallClause(sample, judged);
    case 'holds':
      return `${asked} is held: ${shippedWhile(judged, unit)}, from ${window!.from} to ${window!.to}`;
    case 'not settled': {
      if (shortfall === null)
        return `whether ${asked} is held is not settled: ${whyNoWindow(sample, askedPerDay!, leadMinutes)}`;
      const missing =
        `${mean(shortfall, 100)} % of what is asked ` +
        (shortfall.low === null ? 'is missing' : `(${bounds(shortfall, 100)}) is missing`);
      return (
        `whether ${asked} is held is not settled: ${shippedWhile(judged, unit)}; ` +
        `${missing} where ${number(100 * judged.allowed)} % may be, so ` +
        (tooShort(judged) ?? 'more replications are needed')
      );
    }
  }
}

function whyNoWindow(sample: Sample, asked: number, lead: number): string {
  if (Number.isNaN(lead)) return 'no unit was shipped';
  if (!sample.calendar.releaseDays.some((day) => day.usual === asked))
    return 'the programme ends before its plan comes to it';
  return (
    `it is asked for too short a time, no whole ${sample.clock.buckets.unit} begins one mean ` +
    `lead time (${number(lead / MINUTES_PER_DAY)} days) after it is first asked and ends before ` +
    'it is last asked'
  );
}

/**
 * `3.46 a day are shipped (95 % CI 3.41 to 3.51, 40 replications) while 4 are asked`, and how that was
 * counted.
 */
function shippedWhile(judged: RateJudged, unit: PlannersUnit): string {
  const { asked, held } = inPlannersUnit(unit, judged);
  return (
    `${shippedText(held!, unit)} while ${number(asked!)} ${asked === 1 ? 'is' : 'are'} asked` +
    countedText(counted(judged))
  );
}

/** Why no number of replications would settle it: loads come too seldom; null: they do not. */
function tooShort({ counting, window, allowed }: RateJudged): string | null {
  if (counting === null || window === null || counting.upset <= allowed * window.asked) return null;
  return (
    `a longer time has to be asked for: ${slowestText(counting.loads)}, and how full the last was can make ` +
    `${count(Math.ceil(counting.upset), 'unit')} in these ${number(window.workingDays)}`
  );
}

const counted = ({ counting }: RateJudged): CountingResult | null =>
  counting === null ? null : countingResult(counting);

/** @param shipped in the unit */
function shippedText(shipped: Estimate, unit: PlannersUnit): string {
  const text = mean(shipped),
    verb = text === '1' ? 'is' : 'are';
  return `${text} ${eachWorking(unit)} ${verb} shipped (${intervalAndCount(shipped)})`;
}

function standstill(sample: Sample, gridlocks: number): string {
  return (
    `the build comes to a standstill in ${exact(gridlocks)} of ` +
    `${count(sample.replications, 'replication')} (gridlock)`
  );
}

const WORDS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
/** `four a day`, `20 a week`. */
const rate = (asked: number | null, unit: PlannersUnit): string =>
  `${WORDS[asked ?? 0] ?? exact(asked ?? 0)} ${each(unit)}`;
