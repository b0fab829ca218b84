import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { capital, count, exact, intervalAndCount, mean, number } from '../format.js';
import type { Shippable } from '../held/evidence.js';
import { holdingText } from '../held/holding.js';
import type { RateJudged } from '../held/rate-held.js';
import { type CountingResult, countedText, countingResult, slowestText } from '../loads/words.js';
import { daysInOne, each, eachWorking, inUnit, type PlannersUnit } from '../planners-unit.js';
import type { Window } from '../programme/judged-window.js';
import type { Sample } from '../sample/sample.js';
import { type Estimate, mapped } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';
import { plannersUnit } from '../unit-of.js';
import { type UnusualWeeks, unusualClause } from './unusual-weeks.js';

/**
 * The rate asked at its highest, units per working day, and what was shipped per working day while it was
 * asked for.
 */
export interface Answer extends Pick<RateJudged, 'verdict' | 'askedPerDay' | 'heldPerDay'> {
  readonly sentence: string;
  /** Builds that keep up with the rate; null without weeks to judge. */
  readonly keptUp: Proportion | null;
  /** When more is asked; null where that was not looked at, since too few builds keep up. */
  readonly canShip: Shippable | null;
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
  const { verdict, askedPerDay, heldPerDay, window, holding } = judged,
    clauses = [
      sentence(sample, judged, throughputPerDay),
      unusual === null ? null : unusualClause(unusual, 'judged'),
    ];
  return {
    verdict,
    askedPerDay,
    heldPerDay,
    keptUp: holding?.keptUp ?? null,
    canShip: shippableOf(holding),
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
    { gridlocks, heldPerDay, holding } = judged,
    figures = heldPerDay === null || asked === null ? null : shippedWhile(judged, unit);
  const parts = [
    ...(holding === null ? [] : [holdingText(holding, unit)]),
    ...(gridlocks > 0 ? [standstill(sample, gridlocks)] : []),
    ...(figures === null ? [] : [figures]),
  ];
  return `${rate(asked, unit)} is not held: ${parts.join('; ')}`;
}

function sentence(sample: Sample, judged: RateJudged, throughputPerDay: Estimate): string {
  const { askedPerDay, holding, window, leadMinutes, gridlocks } = judged,
    unit = plannersUnit(sample.scenario),
    asked = rate(inPlannersUnit(unit, judged).asked, unit),
    standstills = gridlocks > 0 ? `; ${standstill(sample, gridlocks)}` : '';
  switch (judged.verdict) {
    case 'no rate asked': {
      return `no rate is asked: ${shippedText(throughputPerDay, unit)} over the whole run${standstills}`;
    }
    case 'falls short':
      return shortfallClause(sample, judged);
    case 'holds':
      return (
        [
          `${asked} is held in ${holdingCount(judged)}: ${shippedWhile(judged, unit)}`,
          `from ${window!.from} to ${window!.to}`,
        ].join(', ') + standstills
      );
    case 'not settled': {
      const open = `whether ${asked} is held is not settled: `;
      if (holding === null) return `${open}${whyNoWindow(sample, askedPerDay!, leadMinutes)}${standstills}`;
      const why = tooShort(judged) ?? 'more replications are needed';
      return `${open}${shippedWhile(judged, unit)}; ${holdingText(holding, unit)}, so ${why}${standstills}`;
    }
  }
}

/** `29 of 30 builds`. */
const holdingCount = ({ holding }: RateJudged): string => {
  const { keptUp } = holding!;
  return `${exact(keptUp.count)} of ${count(keptUp.n, 'build')}`;
};

const shippableOf = (holding: RateJudged['holding']): Shippable | null => {
  if (holding === null || holding.canShip === null) return null;
  const { least, most } = holding.canShip;
  return { least, most };
};

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
function tooShort({ counting, window, holding }: RateJudged): string | null {
  if (counting === null || window === null || holding?.isWhole !== false) return null;
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
/** `four`, `20`: as running text has it. */
export const inWords = (n: number): string => WORDS[n] ?? exact(n);

/** `four a day`, `20 a week`. */
const rate = (asked: number | null, unit: PlannersUnit): string => `${inWords(asked ?? 0)} ${each(unit)}`;
