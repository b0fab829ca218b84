import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { bounds, count, exact, intervalName, mean, number, withInterval } from '../format.js';
import { daysInOne, each, eachWorking, inUnit, type PlannersUnit, plannersUnit } from '../planners-unit.js';
import type { Window } from '../programme/judged-window.js';
import { type RateJudged, SHORTFALL_ALLOWED } from '../programme/rate-held.js';
import type { Sample } from '../sample/sample.js';
import type { BottleneckResult } from '../sections/bottlenecks.js';
import { type Estimate, mapped } from '../statistics/estimate.js';

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
  bottlenecks: readonly BottleneckResult[],
): Answer {
  const { verdict, askedPerDay, heldPerDay, window } = judged;
  return {
    verdict,
    askedPerDay,
    heldPerDay,
    ...inPlannersUnit(plannersUnit(sample.scenario), judged),
    window: window === null ? null : { from: window.from, to: window.to },
    sentence: `${capital(sentence(sample, judged, throughputPerDay, bottlenecks[0]))}.`,
  };
}

/** What falls short, without its cause: `four a day is not held: ...`. */
export function shortfallClause(sample: Sample, judged: RateJudged): string {
  const unit = plannersUnit(sample.scenario),
    { asked, held } = inPlannersUnit(unit, judged),
    { gridlocks } = judged;
  const figures = held === null || asked === null ? null : shippedWhile(held, asked, unit);
  const parts = [
    ...(gridlocks > 0 ? [standstill(sample, gridlocks)] : []),
    ...(figures === null ? [] : [figures]),
  ];
  return `${rate(asked, unit)} is not held: ${parts.join('; ')}`;
}

function sentence(
  sample: Sample,
  judged: RateJudged,
  throughputPerDay: Estimate,
  bottleneck: BottleneckResult | undefined,
): string {
  const { askedPerDay, shortfall, window, leadMinutes } = judged,
    unit = plannersUnit(sample.scenario),
    figures = inPlannersUnit(unit, judged),
    asked = rate(figures.asked, unit),
    shipped = (): string => shippedWhile(figures.held!, figures.asked!, unit);
  const known = bottleneck !== undefined && bottleneck.share.count > 0 ? bottleneck : null;
  switch (judged.verdict) {
    case 'no rate asked': {
      const all = `no rate is asked: ${shippedText(throughputPerDay, unit)} over the whole run`;
      if (judged.gridlocks > 0) return `${all}; ${standstill(sample, judged.gridlocks)}`;
      return known === null ? all : `${all}; ${nearest(known)}`;
    }
    case 'falls short': {
      // In a gridlock, who waits for whom is the cause; the findings say it.
      if (known === null || judged.gridlocks > 0) return shortfallClause(sample, judged);
      return `${shortfallClause(sample, judged)}; ${named(known)} stops it (bottleneck in ${share(known)})`;
    }
    case 'holds':
      return (
        `${asked} is held: ${shipped()}, from ${window!.from} to ` +
        window!.to +
        (known === null ? '' : `; ${nearest(known)}`)
      );
    case 'not settled': {
      if (shortfall === null)
        return `whether ${asked} is held is not settled: ${whyNoWindow(sample, askedPerDay!, leadMinutes)}`;
      const missing =
        `${mean(shortfall, 100)} % of what is asked ` +
        (shortfall.low === null ? 'is missing' : `(${bounds(shortfall, 100)}) is missing`);
      return (
        `whether ${asked} is held is not settled: ${shipped()}; ` +
        `${missing} where ${number(100 * SHORTFALL_ALLOWED)} % may be, so more replications are needed`
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

/** `3.46 a day are shipped (95 % CI 3.41 to 3.51, 40 replications) while 4 are asked`. */
function shippedWhile(held: Estimate, asked: number, unit: PlannersUnit): string {
  return `${shippedText(held, unit)} while ${number(asked)} ${asked === 1 ? 'is' : 'are'} asked`;
}

/** @param shipped in the unit */
function shippedText(shipped: Estimate, unit: PlannersUnit): string {
  const text = mean(shipped),
    verb = text === '1' ? 'is' : 'are';
  if (shipped.low === null) return `${withInterval(shipped, eachWorking(unit))} ${verb} shipped`;
  return (
    `${text} ${eachWorking(unit)} ${verb} shipped (${intervalName(shipped.level)} ` +
    `${bounds(shipped)}, ${count(shipped.n, 'replication')})`
  );
}

function standstill(sample: Sample, gridlocks: number): string {
  return (
    `the build comes to a standstill in ${exact(gridlocks)} of ` +
    `${count(sample.replications, 'replication')} (gridlock)`
  );
}

const named = ({ kind, name }: BottleneckResult): string => `the ${kind} ${name}`;
const nearest = (bottleneck: BottleneckResult): string =>
  `nearest to its limit is ${named(bottleneck)} (bottleneck in ${share(bottleneck)})`;
const share = ({ share: { share } }: BottleneckResult): string => `${number(100 * share)} % of replications`;

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
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
