import { sum } from '../statistics/sums.js';
import type { Model } from '../../flow/model/model.js';
import { isoDate, dayNumber } from '../../scenario/calendar/date.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/read.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { capacity } from '../capacity/capacity.js';
import { amount } from '../statistics/interval.js';
import type { Journal } from '../run/journal.js';
import { proportion } from '../statistics/proportion.js';
import { rampSentence, rateSentence } from './answer.js';
import { judge, type Judged, type RateReading, readRate } from './verdict.js';
import { atRate, noRateReason, rampOf, type RateAsked } from './at-rate.js';
import { highestThatHolds, leastThatHolds } from './search.js';
import { releaseCalendar, workingDaysBetween } from '../sample/planned.js';
import { Replicator } from '../run/replicator.js';
import { headOf } from '../head.js';
import type { RampResult, RatePoint, RateResults, RateVerdict } from './results.js';
import { resources } from '../sections/bottlenecks.js';
import { SHORTFALL_ALLOWED } from '../programme/rate-held.js';

export interface RateOptions {
  readonly scenario: Scenario;
  /** Name of the scenario's file; folders are left out of the results. */
  readonly file: string;
  /** The grid of rates, units a working day: from, from + step, .. up to `to`. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Length of the window. */
  readonly weeks: number;
  /** Weeks for the floor to fill before it; undefined: from the lead time of a pilot run. */
  readonly settleWeeks?: number | undefined;
  /** Share of replications that has to keep up, 0..1. */
  readonly sure: number;
  /** The rate that the ramp leads to; undefined: the highest that holds. */
  readonly rampTo?: number | undefined;
  /** Of each rate; a rate that is not settled gets up to four times as many. */
  readonly replications: number;
  readonly seed: string;
  readonly workers: number;
  readonly level?: number | undefined;
  readonly journal?: Journal<RateReading> | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}

/** A rate that is not settled is run up to so many times the replications. */
const MOST_TIMES = 4;
const PILOT_REPLICATIONS = 4,
  PILOT_SETTLE_WEEKS = 8;
/** Beyond the lead time: WIP comes to rest behind the first unit. */
const REST_WEEKS = 4;
const LONGEST_SETTLE_WEEKS = 52,
  WEEKS_A_YEAR = 52;
/** Below so many units a window cannot show 2 %. */
const LEAST_UNITS = 50;

/**
 * The highest rate that holds, and from which week on the last phase of the ramp may begin. All rates see the
 * same chance (common random numbers), so that they differ by the rate alone. Same scenario, options and
 * seed: same results, for any number of threads.
 * @throws RangeError `programme: expected ..` for a scenario that has no rate, or a window too short for it
 */
export async function rateStudy(options: RateOptions): Promise<RateResults> {
  const {
    scenario,
    file,
    from,
    to,
    step,
    weeks,
    sure,
    replications,
    seed,
    workers,
    level = 0.95,
    journal,
    onReplication,
    signal,
  } = options;
  const reason = noRateReason(scenario);
  if (reason !== null)
    throw new RangeError(
      `programme: expected one with a \`rate\`, saw ${reason}; give it a rate to be changed`,
    );
  const model = compile(scenario),
    replicator = new Replicator<RateReading>({
      seed,
      workers,
      read: readRate,
      journal,
      onReplication,
      signal,
    });
  try {
    // Said before anything is run, as far as it can be.
    const lowest = Math.min(from, rampOf(scenario).length > 1 ? (options.rampTo ?? from) : from);
    watched(scenario, { perDay: lowest, settleWeeks: options.settleWeeks ?? PILOT_SETTLE_WEEKS, weeks });
    const settleWeeks = options.settleWeeks ?? (await settling(scenario, from, weeks, replicator));
    const line = new Line(scenario, replicator, { replications, sure, level });
    const grid = Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, i) =>
      Number((from + i * step).toFixed(9)),
    );
    const points = new Map<number, RatePoint>();
    const found = await highestThatHolds(grid.length - 1, async (i) => {
      const point = await line.point({ perDay: grid[i]!, settleWeeks, weeks });
      points.set(i, point);
      return point.verdict;
    });
    const rate = (i: number | null): number | null => (i === null ? null : grid[i]!),
      highestPerDay = rate(found.highest);
    const bracket = {
      highestPerDay,
      abovePerDay: rate(found.above),
      contradictions: found.contradictions.map((i) => grid[i]!),
    };
    const sorted = [...points].sort(([a], [b]) => a - b).map(([, point]) => point);
    const window = atRate(scenario, { perDay: from, settleWeeks, weeks }),
      plannedPerDay = rampOf(scenario).at(-1)!.perDay,
      { bottleneck, highestRatePerDay } = capacity(model, scenario);
    const base = {
      ...headOf('rate', { scenario, file, seed, level }),
      replications,
      mostReplications: MOST_TIMES * replications,
      sure,
      shortfallAllowed: SHORTFALL_ALLOWED,
      grid: { from, to: grid.at(-1)!, step },
      window: { from: window.from, to: window.to, weeks, settleWeeks },
      plannedPerDay,
      arithmetic:
        bottleneck === null || highestRatePerDay === null
          ? null
          : { perDay: highestRatePerDay, name: bottleneck.name, kind: bottleneck.kind },
      points: sorted,
      changes: changesOf(sorted),
    };
    const sentence = rateSentence({ ...base, ...bracket });
    return {
      ...base,
      answer: { sentence, ...bracket },
      ramp: await ramp(scenario, line, options.rampTo ?? highestPerDay, weeks, settleWeeks),
    };
  } finally {
    await replicator.close();
  }
}

/**
 * Weeks until the floor is full: the longest 90 % lead time of a few replications at the lowest rate, and
 * some for WIP to come to rest.
 */
async function settling(
  scenario: Scenario,
  perDay: number,
  weeks: number,
  replicator: Replicator<RateReading>,
): Promise<number> {
  const pilot = atRate(scenario, { perDay, settleWeeks: PILOT_SETTLE_WEEKS, weeks });
  const [readings] = (await replicator.run(
    [{ key: digest(pilot.scenario), model: compile(pilot.scenario) }],
    1,
    PILOT_REPLICATIONS,
  )) as [RateReading[]];
  const longest = Math.max(0, ...readings.map(({ leadP90Days }) => leadP90Days).filter(Number.isFinite));
  return Math.min(LONGEST_SETTLE_WEEKS, Math.ceil(longest / 7) + REST_WEEKS);
}

/** The line at any rate: more replications are run where the verdict is not settled. */
class Line {
  constructor(
    private readonly scenario: Scenario,
    private readonly replicator: Replicator<RateReading>,
    private readonly asked: { readonly replications: number; readonly sure: number; readonly level: number },
  ) {}

  async point(rate: RateAsked): Promise<RatePoint> {
    const { readings, judged, model, units, workingDays, first, end } = await this.run(rate),
      { level } = this.asked;
    const of = (value: (reading: RateReading) => number) => amount(readings.map(value), level);
    return {
      perDay: rate.perDay,
      ...judged,
      replications: readings.length,
      asked: units,
      shippedPerDay: of(({ shippedIn }) => sum(shippedIn.subarray(first, end)) / workingDays),
      wip: of(({ wip }) => wip),
      leadDays: of(({ leadMeanDays }) => leadMeanDays),
      stops: stopsOf(model, readings, level),
    };
  }

  async judged(rate: RateAsked): Promise<Judged & { readonly replications: number }> {
    const { readings, judged } = await this.run(rate);
    return { ...judged, replications: readings.length };
  }

  private async run(rate: RateAsked) {
    const { replications, sure, level } = this.asked,
      { scenario, model, first, end, fromMin, toMin, released, units } = watched(this.scenario, rate);
    const variant = { key: digest(scenario), model },
      { orders } = model.programme;
    const readings: RateReading[] = [];
    for (let most = replications; ; most *= 2) {
      readings.push(...(await this.replicator.run([variant], readings.length + 1, most))[0]!);
      const judged = judge(
        readings,
        { first, end, released, isBuiltAgain: orders.replaceScrapped },
        sure,
        level,
      );
      if (judged.verdict !== 'not settled' || most >= MOST_TIMES * replications) {
        return {
          readings,
          judged,
          model,
          units,
          workingDays: workingDaysBetween(releaseCalendar(scenario).workingDays, fromMin, toMin),
          first,
          end,
        };
      }
    }
  }
}

/** A scenario at a rate, and the units released in its window by week and in all. */
function watched(base: Scenario, rate: RateAsked) {
  const at = atRate(base, rate),
    { scenario, first, end } = at,
    model = compile(scenario),
    { times, bucketEdges } = model.programme;
  const released = Array.from({ length: end - first }, (_, i) =>
    times.reduce(
      (sum, time) => (time >= bucketEdges[first + i]! && time < bucketEdges[first + i + 1]! ? sum + 1 : sum),
      0,
    ),
  );
  const units = sum(released);
  if (units < LEAST_UNITS)
    throw new RangeError(
      `programme: expected at least ${LEAST_UNITS} units in a window of ${rate.weeks} weeks at ` +
        `${rate.perDay} a day, saw ${units}; give more --weeks or a higher rate`,
    );
  return { ...at, model, released, units };
}

function stopsOf(model: Model, readings: readonly RateReading[], level: number): RatePoint['stops'] {
  return resources({ model })
    .map(({ id, name, kind, site }) => ({
      name,
      kind,
      site,
      share: proportion(readings.filter(({ busiest }) => busiest === id).length, readings.length, level),
    }))
    .filter(({ share }) => share.count > 0)
    .sort((a, b) => b.share.count - a.share.count);
}

function changesOf(points: readonly RatePoint[]): RateResults['changes'] {
  const known = points.flatMap(({ perDay, stops: [first] }) =>
    first === undefined ? [] : [{ perDay, name: first.name }],
  );
  return known
    .slice(1)
    .flatMap(({ perDay, name }, i) =>
      name === known[i]!.name
        ? []
        : [{ fromPerDay: known[i]!.perDay, toPerDay: perDay, before: known[i]!.name, after: name }],
    );
}

/**
 * Bisection over the weeks of a year from the programme's start: in each the last phase begins on the same
 * weekday as the start.
 */
async function ramp(
  scenario: Scenario,
  line: Line,
  perDay: number | null,
  weeks: number,
  settleWeeks: number,
): Promise<RampResult> {
  // After a lead time what comes out has to be what goes in; there is no rest behind it, since learning goes
  // on in it.
  const leadWeeks = Math.max(1, settleWeeks - REST_WEEKS),
    none = { perDay, begins: null, week: null, settleWeeks: leadWeeks, tried: [] };
  if (perDay === null)
    return { ...none, outcome: 'no rate', sentence: rampSentence('no rate', null, null, null) };
  if (rampOf(scenario).length === 1)
    return { ...none, outcome: 'no ramp', sentence: rampSentence('no ramp', perDay, null, null) };
  const begins = (week: number): string => isoDate(dayNumber(scenario.programme.start) + 7 * week);
  const tried = new Map<number, RampResult['tried'][number]>();
  const week = await leastThatHolds(WEEKS_A_YEAR, async (each): Promise<RateVerdict> => {
    const { verdict, why, replications, keptUp, drift } = await line.judged({
      perDay,
      begins: begins(each),
      settleWeeks: leadWeeks,
      weeks,
    });
    tried.set(each, { week: each, begins: begins(each), verdict, why, replications, keptUp, drift });
    return verdict;
  });
  const outcome = week === null ? 'not within a year' : week === 0 ? 'from the start' : 'from a week on',
    at = week === null ? null : begins(week);
  return {
    ...none,
    outcome,
    week,
    begins: at,
    sentence: rampSentence(outcome, perDay, week, at),
    tried: [...tried.values()].sort((a, b) => a.week - b.week),
  };
}
