import { exact } from '../../../study/format.js';
import { inUnit, unitsEach } from '../../../study/planners-unit.js';
import type { BuildResult, ReachResults } from '../../../study/reach/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { inPlanners, nowOf } from '../../first/reach/told.js';
import { isNarrow } from '../../style.js';
import { type Axis, TICKS, valueAxis } from '../axes.js';
import { figures } from '../figures.js';

/** A value with its interval. */
export interface Told {
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A line across the plot with its name. */
export interface Level {
  readonly name: string;
  readonly at: number;
  /** What is nearly enough reaches as far, on the axis; as `at` where nothing is. */
  readonly nearly: number;
}

/** What stands on the upright axis of a picture of builds. */
export interface Upright {
  /** Of its series. */
  readonly name: string;
  readonly title: string;
  readonly of: (build: BuildResult) => Told | null;
  /** In words, with its interval. */
  readonly text: (build: BuildResult) => string;
  readonly levels: readonly Level[];
  /** How a value of the axis is written; left out: as a number. */
  readonly tick?: (value: number) => string;
}

/** Builds that ship so much less still count as shipping what is asked, see `keepsUp`. */
const ALLOWED = 0.02;

/** Units shipped in the planner's time; `all` are the builds that are drawn. */
export function shippedUpright(results: ReachResults, all: readonly BuildResult[]): Upright {
  const { goal, rateUnit } = results,
    rate = (build: BuildResult): Estimate => inPlanners(build.throughput, results),
    write = figures(all.map(rate)),
    asked = goal.kind === 'rate' ? inUnit(goal.perDay, rateUnit) : null;
  return {
    name: 'shipped',
    title: unitsEach(rateUnit),
    of: rate,
    text: (build) => `${write.mean(rate(build))} a ${rateUnit.per}`,
    levels:
      asked === null
        ? []
        : [{ name: `asked: ${exact(asked)} a ${rateUnit.per}`, at: asked, nearly: asked * (1 - ALLOWED) }],
  };
}

/** Of the builds have the last unit out by the day that is drawn. */
export const DRAWN_SHARE = 0.8;
const MS_A_DAY = 86_400_000;
const dayOf = (iso: string): number => Math.round(Date.parse(iso) / MS_A_DAY);

/**
 * When the last unit is out in four of five builds, days from the day that is asked or planned, else from
 * that of the build as it is; null: it is known of none.
 */
export function lastUnitUpright(results: ReachResults): Upright | null {
  const { goal, plannedEnd } = results,
    quantile = ({ lastUnit }: BuildResult) => lastUnit.find(({ p }) => p === DRAWN_SHARE),
    wanted = goal.kind === 'date' ? goal.date : null,
    from = wanted ?? plannedEnd ?? quantile(nowOf(results))?.date ?? null;
  if (from === null) return null;
  const zero = dayOf(from),
    since = (iso: string | null): number | null => (iso === null ? null : dayOf(iso) - zero),
    level = (name: string, iso: string | null): Level[] =>
      iso === null ? [] : [{ name: `${name}: ${iso}`, at: dayOf(iso) - zero, nearly: dayOf(iso) - zero }];
  return {
    name: `last unit, days after ${from}`,
    title: 'last unit out, four of five builds',
    of: (build) => {
      const found = quantile(build),
        mean = since(found?.date ?? null);
      return found === undefined || mean === null
        ? null
        : { mean, low: since(found.low), high: since(found.high) };
    },
    text: (build) => quantile(build)?.date ?? 'not known',
    levels: [...level('asked', wanted), ...level('plan', plannedEnd === wanted ? null : plannedEnd)],
    tick: (value) =>
      Number.isInteger(value) ? new Date((zero + value) * MS_A_DAY).toISOString().slice(0, 10) : '',
  };
}

/** Of a plot with its axis, CSS pixels. */
export const plotHeight = (): number => (isNarrow() ? 290 : 330);

/** Room above and below what is drawn, of its height. */
const ROOM = 0.12;

/** The axis, as far as builds and levels reach. */
export function uprightAxis({ of, levels, title, tick }: Upright, builds: readonly BuildResult[]): Axis {
  const values = [
      ...builds.flatMap((build) => {
        const told = of(build);
        return told === null ? [] : [told.mean, told.low ?? told.mean, told.high ?? told.mean];
      }),
      ...levels.map(({ at }) => at),
    ],
    [low, high] = [Math.min(...values), Math.max(...values)],
    room = ROOM * (high - low) || 0.5;
  return valueAxis(title, {
    beginAtZero: false,
    min: tick === undefined ? Math.max(0, low - room) : Math.floor(low - room),
    max: tick === undefined ? high + room : Math.ceil(high + room),
    ticks: {
      ...TICKS,
      maxTicksLimit: isNarrow() ? 6 : 9,
      includeBounds: false,
      ...(tick && { callback: (value: number | string) => tick(Number(value)) }),
    },
  });
}
