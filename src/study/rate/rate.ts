import { compile } from '../../scenario/compile.js';
import { LEVEL, type StudyOptions } from '../asked.js';
import { capacity } from '../capacity/capacity.js';
import { demand } from '../capacity/demand.js';
import { headOf } from '../head.js';
import { SHORTFALL_ALLOWED } from '../held/shortfall.js';
import { defined } from '../lists.js';
import { countingResult } from '../loads/words.js';
import { type PlannersUnit } from '../planners-unit.js';
import { plannedEnd } from '../programme/dates.js';
import { unusualWeeks } from '../programme/unusual-weeks.js';
import { Replicator } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { plannersUnit } from '../unit-of.js';
import { noRateReason, rampOf } from './at-rate.js';
import { lastUnitAt } from './last-unit.js';
import { Line, watched } from './line.js';
import { Looks } from './looks.js';
import { changesOf, pointOf } from './point.js';
import { ramp } from './ramp.js';
import type { RateResults } from './results.js';
import { highestThatHolds } from './search.js';
import { rateSentence } from './sentence.js';
import { PILOT_SETTLE_WEEKS, settling } from './settling.js';
import { spreadOf } from './spread.js';
import { stoppedAbove } from './stopped.js';
import { Judge } from './verdict.js';
import { USUAL_WEEKS, weeksFor } from './weeks.js';

export interface RateOptions extends StudyOptions {
  /** Unit of the rates below, and of the answer; undefined: that of the scenario's highest rate. */
  readonly unit?: PlannersUnit | undefined;
  /** The grid of rates, in this unit: from, from + step, .. up to `to`. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Length of the window; undefined: half a year, or as long as the loads of the build take. */
  readonly weeks?: number | undefined;
  /** Weeks for the floor to fill before it; undefined: from the lead time of a pilot run. */
  readonly settleWeeks?: number | undefined;
  /** Share of replications that has to keep up, 0..1. */
  readonly sure: number;
  /** The rate that the ramp leads to; undefined: the highest that holds. */
  readonly rampTo?: number | undefined;
  /** Of each rate; a rate that is not settled gets up to four times as many. */
  readonly replications: number;
}

/**
 * The highest rate that holds, and from which week on the last phase of the ramp may begin. All rates see the
 * same chance (common random numbers), so that they differ by the rate alone. Same scenario, options and
 * seed: same results, for any number of threads.
 * @throws RangeError `programme: expected ..` for a scenario that has no rate, or a window too short for it
 */
export async function rateStudy(options: RateOptions): Promise<RateResults> {
  const { scenario, sure, replications, level = LEVEL } = options,
    { unit = plannersUnit(scenario) } = options;
  const perDay = (rate: number): number => rate / unit.workingDays,
    last = Math.floor((options.to - options.from) / options.step + 1e-9),
    rateOf = (i: number): number => perDay(Number((options.from + i * options.step).toFixed(9))),
    from = rateOf(0),
    rampTo = options.rampTo === undefined ? undefined : perDay(options.rampTo);
  const reason = noRateReason(scenario);
  if (reason !== null)
    throw new RangeError(
      `programme: expected one with a \`rate\`, got ${reason}; give it a rate to be changed`,
    );
  const model = compile(scenario),
    replicator = new Replicator(options);
  try {
    const phases = rampOf(scenario),
      { bottleneck, highestRatePerDay } = capacity(model, scenario),
      arithmetic = { asks: demand(model), ceiling: highestRatePerDay ?? Infinity };
    // Said before anything is run, as far as it can be.
    const lowest = Math.min(from, phases.length > 1 ? (rampTo ?? from) : from),
      weeks = weeksFor(
        scenario,
        lowest,
        last > 0 ? perDay(options.step) : Infinity,
        options.settleWeeks ?? PILOT_SETTLE_WEEKS,
        options.weeks,
        arithmetic,
        unit,
      );
    const settleWeeks = options.settleWeeks ?? (await settling(scenario, from, weeks, replicator));
    const looks = new Looks(replications, level),
      line = new Line(scenario, replicator, arithmetic, sure, looks);
    const judge = new Judge(line, {
      window: { settleWeeks, weeks },
      ceiling: arithmetic.ceiling,
      unit,
      next: (rate) => rateOf(Math.ceil((rate * unit.workingDays - options.from) / options.step - 1e-9)),
    });
    const found = await settled(line, () => highestThatHolds(last, (i) => judge.look(rateOf(i))));
    const bracket = {
      highestPerDay: found.highest === null ? null : rateOf(found.highest),
      abovePerDay: found.above === null ? null : rateOf(found.above),
      contradictions: found.contradictions.map(rateOf),
      spread: spreadOf(judge.ran, { last, perDay: rateOf }, found.highest ?? -1, {
        sure,
        level,
        most: looks.most,
        ceiling: arithmetic.ceiling,
        seed: options.seed,
      }),
    };
    const points = judge.ran.map((ran) => ({ ...pointOf(ran, level), ...judge.verdict(ran) }));
    const window = watched(scenario, { perDay: from, settleWeeks, weeks }, arithmetic);
    const base = {
      ...headOf('rate', { ...options, level }),
      rateUnit: unit,
      replications,
      mostReplications: looks.most,
      sure,
      shortfallAllowed: SHORTFALL_ALLOWED,
      grid: { from, to: rateOf(last), step: perDay(options.step) },
      window: {
        from: window.from,
        to: window.to,
        weeks,
        settleWeeks,
        isLonger: options.weeks === undefined && weeks > USUAL_WEEKS,
        unusual: unusualWeeks(window.plan, window.first, window.end - 1),
      },
      counting: countingResult(window.counting),
      plannedPerDay: defined(phases.at(-1)).perDay,
      arithmetic:
        bottleneck === null || highestRatePerDay === null
          ? null
          : { perDay: highestRatePerDay, name: bottleneck.name, kind: bottleneck.kind },
      points,
      changes: changesOf(points),
    };
    const stopped = await stoppedAbove(
      bracket.abovePerDay,
      { scenario, data: options.data, arithmetic, settleWeeks, weeks, replications, level },
      replicator,
    );
    const sentence = rateSentence({ ...base, ...bracket, constraint: stopped.constraint });
    return {
      ...base,
      ...stopped,
      answer: { sentence, ...bracket },
      plannedEnd: plannedEnd(planned(scenario, model)),
      lastUnit: await lastUnitAt(bracket.highestPerDay, scenario, { replications, level }, replicator),
      ramp: await ramp(scenario, line, rampTo ?? bracket.highestPerDay, weeks, settleWeeks, unit),
    };
  } finally {
    await replicator.close();
  }
}

/**
 * What is run for one rate may tell of another that was looked at before: the search goes over what is known
 * until nothing new is run.
 */
async function settled<Found>(line: Line, search: () => Promise<Found>): Promise<Found> {
  for (;;) {
    const before = line.replications,
      found = await search();
    if (line.replications === before) return found;
  }
}
