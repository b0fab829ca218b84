import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { bounds, count, intervalName, mean, number, withInterval } from '../format.js';
import { type CountingResult, countedText, countingResult, slowestText } from '../loads/words.js';
import type { Window } from '../programme/judged-window.js';
import type { RateJudged } from '../programme/rate-held.js';
import type { Sample } from '../sample/sample.js';
import type { BottleneckResult } from '../sections/bottlenecks.js';
import type { Estimate } from '../statistics/estimate.js';

/**
 * The rate asked at its highest, units per working day, and what was shipped per working day while it was
 * asked for.
 */
export interface Answer extends Pick<RateJudged, 'verdict' | 'askedPerDay' | 'heldPerDay'> {
  readonly sentence: string;
  readonly window: Pick<Window, 'from' | 'to'> | null;
  /** How units shipped in the window were counted; null without one. */
  readonly counting: CountingResult | null;
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
    window: window === null ? null : { from: window.from, to: window.to },
    counting: counted(judged),
    sentence: `${capital(sentence(sample, judged, throughputPerDay, bottlenecks[0]))}.`,
  };
}

/** What falls short, without its cause: `four a day is not held: ...`. */
export function shortfallClause(sample: Sample, judged: RateJudged): string {
  const { askedPerDay, heldPerDay, gridlocks } = judged,
    figures = heldPerDay === null || askedPerDay === null ? null : shippedWhile(judged);
  const parts = [
    ...(gridlocks > 0 ? [standstill(sample, gridlocks)] : []),
    ...(figures === null ? [] : [figures]),
  ];
  return `${rate(askedPerDay)} is not held: ${parts.join('; ')}`;
}

function sentence(
  sample: Sample,
  judged: RateJudged,
  throughputPerDay: Estimate,
  bottleneck: BottleneckResult | undefined,
): string {
  const { askedPerDay, shortfall, window, leadMinutes } = judged,
    asked = rate(askedPerDay);
  const known = bottleneck !== undefined && bottleneck.share.count > 0 ? bottleneck : null;
  switch (judged.verdict) {
    case 'no rate asked': {
      const shipped = `no rate is asked: ${shippedText(throughputPerDay)} over the whole run`;
      if (judged.gridlocks > 0) return `${shipped}; ${standstill(sample, judged.gridlocks)}`;
      return known === null ? shipped : `${shipped}; ${nearest(known)}`;
    }
    case 'falls short': {
      // In a gridlock, who waits for whom is the cause; the findings say it.
      if (known === null || judged.gridlocks > 0) return shortfallClause(sample, judged);
      return `${shortfallClause(sample, judged)}; ${named(known)} stops it (bottleneck in ${share(known)})`;
    }
    case 'holds':
      return (
        `${asked} is held: ${shippedWhile(judged)}, from ${window!.from} to ` +
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
        `whether ${asked} is held is not settled: ${shippedWhile(judged)}; ` +
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

/** `3.46 a day are shipped (95 % CI 3.41 to 3.51, 40 replications) while 4 are asked`, and how it was counted. */
function shippedWhile(judged: RateJudged): string {
  const { heldPerDay, askedPerDay: asked } = judged;
  return (
    `${shippedText(heldPerDay!)} while ${number(asked!)} ${asked === 1 ? 'is' : 'are'} asked` +
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

function shippedText(perDay: Estimate): string {
  const text = mean(perDay);
  if (perDay.low === null)
    return `${withInterval(perDay, 'a working day')} ${text === '1' ? 'is' : 'are'} shipped`;
  return (
    `${text} a working day ${text === '1' ? 'is' : 'are'} shipped (${intervalName(perDay.level)} ` +
    `${bounds(perDay)}, ${count(perDay.n, 'replication')})`
  );
}

function standstill(sample: Sample, gridlocks: number): string {
  return (
    `the build comes to a standstill in ${gridlocks} of ` +
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
/** `four a day`. */
const rate = (perDay: number | null): string => `${WORDS[perDay ?? 0] ?? number(perDay ?? 0)} a day`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
