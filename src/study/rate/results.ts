import { unusualClause } from '../answer/unusual-weeks.js';
import type { ConstraintResult } from '../constraint/results.js';
import { stopsIt } from '../constraint/sentence.js';
import { count, number } from '../format.js';
import type { ResultsHead } from '../head.js';
import { defined } from '../lists.js';
import { type CountingResult, loadsText } from '../loads/words.js';
import { each, inUnit, rateText } from '../planners-unit.js';
import type { UnusualWeek } from '../programme/unusual-weeks.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';

/** What became of a rate: see docs/rate.md. */
export type RateVerdict = 'holds' | 'does not hold' | 'not settled';

/**
 * The shape of `results.json` of `rateproof rate`. Rates are units released a working day of the first
 * station's site; sentences tell them in `rateUnit`.
 */
export interface RateResults extends ResultsHead<'rate'> {
  /** Replications of a rate at first, and at most where it is not settled. */
  readonly replications: number;
  readonly mostReplications: number;
  /** Share of replications that has to keep up, and what may be missing of the units of the window in one. */
  readonly sure: number;
  readonly shortfallAllowed: number;
  readonly grid: { readonly from: number; readonly to: number; readonly step: number };
  /** The weeks in which every rate is watched, and those before for the floor to fill. */
  readonly window: {
    readonly from: string;
    readonly to: string;
    readonly weeks: number;
    readonly settleWeeks: number;
    /** Weeks of it that are short or hit by an outage. */
    readonly unusual: readonly UnusualWeek[];
    /** It is longer than usual, as loads or a low rate take it. */
    readonly isLonger: boolean;
  };
  /** How units shipped are counted at the lowest rate, where loads are fewest. */
  readonly counting: CountingResult;
  /** The highest rate of the scenario as it is. */
  readonly plannedPerDay: number;
  /** Capacity by arithmetic; null where nothing limits. */
  readonly arithmetic: { readonly perDay: number; readonly name: string; readonly kind: string } | null;
  readonly answer: RateAnswer;
  /** By rate. */
  readonly points: readonly RatePoint[];
  /** Where what is used most changes as the rate rises. */
  readonly changes: readonly {
    readonly fromPerDay: number;
    readonly toPerDay: number;
    readonly before: string;
    readonly after: string;
  }[];
  /**
   * What stops the build, by trial at a tenth above the lowest rate that was not seen to hold, where a gain
   * can show; null where all rates hold.
   */
  readonly constraint: (ConstraintResult & { readonly perDay: number }) | null;
  readonly ramp: RampResult;
}

export interface RateAnswer {
  readonly sentence: string;
  /** Up to here all rates looked at hold; null: not even the lowest of the grid. */
  readonly highestPerDay: number | null;
  /** The lowest rate looked at that was not seen to hold; null: all hold. */
  readonly abovePerDay: number | null;
  /** Rates above that one that hold none the less: a line that is monotone has none. */
  readonly contradictions: readonly number[];
}

export interface RatePoint {
  readonly perDay: number;
  readonly verdict: RateVerdict;
  /** In words, what the verdict rests on. */
  readonly why: string;
  readonly replications: number;
  /** Units released by plan in the window. */
  readonly asked: number;
  readonly keptUp: Proportion;
  /** Growth of units released and not yet out, a week. */
  readonly drift: Estimate;
  readonly gridlocks: number;
  readonly shippedPerDay: Estimate;
  readonly wip: Estimate;
  readonly leadDays: Estimate;
  /**
   * The station, crew, lane, carriers or supply with the highest utilisation, by share of replications, the
   * likeliest first: a hint.
   */
  readonly stops: readonly {
    readonly name: string;
    readonly kind: string;
    readonly site: string;
    readonly share: Proportion;
  }[];
}

/** From which week on the last phase may begin. */
export interface RampResult {
  readonly outcome: 'from the start' | 'from a week on' | 'not within a year' | 'no ramp' | 'no rate';
  readonly sentence: string;
  readonly perDay: number | null;
  /**
   * First day of the last phase, and whole weeks from the start of the programme to it; null where there is
   * none.
   */
  readonly begins: string | null;
  readonly week: number | null;
  readonly settleWeeks: number;
  readonly tried: readonly ({ readonly week: number; readonly begins: string } & Pick<
    RatePoint,
    'verdict' | 'why' | 'replications' | 'keptUp' | 'drift'
  >)[];
}

type Known = Omit<RateResults, 'answer' | 'ramp'> & Omit<RateAnswer, 'sentence'>;

/** The answer in a few sentences, the highest rate first. */
export function rateSentence({
  highestPerDay,
  abovePerDay,
  contradictions,
  grid,
  points,
  arithmetic,
  sure,
  plannedPerDay,
  constraint,
  counting: { loads },
  window,
  rateUnit,
}: Known): string {
  const rate = (perDay: number): string => rateText(perDay, rateUnit);
  const at = (perDay: number) => defined(points.find((point) => point.perDay === perDay));
  const said = [
    highestPerDay === null
      ? `No rate from ${rate(grid.from)} on holds: at ${rate(grid.from)} ` + because(at(grid.from))
      : abovePerDay === null
        ? `${rate(highestPerDay)}, the highest rate looked at, holds: ${because(at(highestPerDay))}`
        : `${rate(highestPerDay)} is the highest rate that holds: ${because(at(highestPerDay))}; ` +
          `at ${rate(abovePerDay)} ${because(at(abovePerDay))}`,
  ];
  if (arithmetic !== null)
    said.push(
      `Arithmetic allows ${number(inUnit(arithmetic.perDay, rateUnit))} ${each(rateUnit)} ` +
        `(${arithmetic.name})`,
    );
  if (constraint !== null)
    said.push(`At ${rate(constraint.perDay)} ${stopsIt(constraint) ?? 'no single thing stops it'}`);
  if (contradictions.length > 0)
    said.push(
      `Beware: ${contradictions.map(rate).join(', ')}, above one that does not hold, ` +
        `${contradictions.length === 1 ? 'holds' : 'hold'} none the less`,
    );
  const marked = unusualClause(
    { unit: 'week', judged: window.weeks, weeks: window.unusual, othersPerDay: null },
    'watched',
  );
  if (marked !== null) said.push(marked);
  if (loads.length > 0)
    said.push(
      `Counted over whole loads (${loadsText(loads)})` +
        (window.isLonger ? `, in ${count(window.weeks, 'week')}, which they take` : ''),
    );
  if (abovePerDay !== null && plannedPerDay >= abovePerDay)
    said.push(`The plan asks for ${rate(plannedPerDay)}, which is more`);
  return (
    `${said.join('. ')}. ("Holds": at least ${number(100 * sure)} % of runs keep up, and units ` +
    'released and not yet out do not become more.)'
  );
}

function because({ verdict, keptUp, replications, why }: RateResults['points'][number]): string {
  return (
    `${keptUp.count} of ${count(replications, 'replication')} keep ` +
    `up${verdict === 'holds' ? ' and open units do not grow' : ` (${why})`}`
  );
}
