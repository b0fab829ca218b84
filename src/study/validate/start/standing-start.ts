import type { Model } from '../../../flow/model/model.js';
import { RELEASE_TIMES } from '../../../flow/model/programme.js';
import { prepare } from '../../../flow/plan.js';
import { isoDate } from '../../../scenario/calendar/date.js';
import { compile } from '../../../scenario/compile.js';
import { releaseWorkingDays } from '../../../scenario/dated/stages.js';
import { runSpan } from '../../../scenario/programme/span.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { Inside } from '../seen/inside.js';
import type { Earlier } from './done.js';
import type { Opening } from './opening.js';
import { overtimeAsked } from './overtime-asked.js';
import type { StandingOrder } from './standing-orders.js';

/** Calendars go on so many days after the period, so that a look ahead finds a window. */
const SLACK_DAYS = 60;

/** A model whose time begins at the start of a day, and that time, minutes since 1970-01-01T00:00Z. */
export interface Begun {
  readonly model: Model;
  readonly origin: number;
  /** Working days of the first station's site, by number. */
  readonly workingDays: ReadonlySet<number>;
  /** As it was written, from its own start on. */
  readonly scenario: Scenario;
}

/**
 * The model from a day on.
 * @param from, until day numbers in the zone of the programme
 * @param standing units of its opening
 */
export function modelFrom(
  scenario: Scenario,
  from: number,
  until: number,
  standing: readonly StandingOrder[] = [],
): Begun {
  const { programme } = scenario;
  const moved: Scenario = {
    ...scenario,
    programme: {
      ...programme,
      start: isoDate(from),
      startMin: undefined,
      until: isoDate(until + SLACK_DAYS),
      quantity: Math.max(1, standing.length),
      lengthMin: undefined,
      warmUpMin: 0,
      findsWarmUp: undefined,
      orders: {
        ...programme.orders,
        list: standing.map((order) => ({
          ...order,
          release: undefined,
          due: undefined,
          written: { path: [] },
        })),
        dueAfterMin: undefined,
      },
    },
  };
  const span = runSpan(moved),
    days = releaseWorkingDays(moved, span).map(({ day }) => day);
  return {
    model: compile(moved),
    scenario,
    origin: span.origin,
    workingDays: new Set(days.filter((day) => from <= day && day < until)),
  };
}

/** Work that began longer ago counts from then. */
const BACK_DAYS = 28;

/** @param day number of the day of the moment, in the zone of the programme */
export function earlierThan(scenario: Scenario, day: number): Earlier {
  const { model, origin } = modelFrom(scenario, day - BACK_DAYS, day + 1);
  return { model, origin, calendars: prepare(model).calendars };
}

/** A unit that comes in, when, and what is known of its options. */
export interface Entry {
  readonly unit: string;
  /** Minutes since 1970-01-01T00:00Z. */
  readonly at: number;
  readonly options: Readonly<Record<string, string>>;
}

/**
 * The model with the units that stand on the floor, which are in its opening, and those that come in as they
 * were logged: entries and options are not left to chance, so that what is compared is the line alone
 * (correlated inspection, Law 2015, sec. 5.6.1; from memory).
 * @param end of the run, minutes since 1970-01-01T00:00Z
 */
export function asLogged(
  { model, origin, scenario }: Begun,
  { placed }: Opening,
  entries: readonly Entry[],
  end: number,
  { begun, gone }: Pick<Inside, 'begun' | 'gone'>,
): Model {
  const { options, programme } = model,
    byName = new Map(placed.map((unit) => [unit.unit, unit])),
    // In the order of the model.
    standing = programme.orders.names.flatMap((name) => byName.get(name ?? '') ?? []),
    units = [...standing, ...entries],
    names = units.map(({ unit }) => unit);
  const values = new Int16Array(units.length * options.length).fill(-1);
  units.forEach((unit, u) => {
    options.forEach((option, o) => {
      const value = unit.options[option.name];
      if (value !== undefined) values[u * options.length + o] = option.values.indexOf(value);
    });
  });
  // What was learnt ahead of the period.
  const learnt = (steps: Model['steps']): Model['steps'] => ({
    ...steps,
    learnBefore: steps.learnBefore.map((times, step) => times + (begun.get(steps.names[step] ?? '') ?? 0)),
  });
  return {
    ...model,
    steps: learnt(model.steps),
    later: model.later.map(({ until, parts }) => ({
      until,
      parts: parts.steps === undefined ? parts : { ...parts, steps: learnt(parts.steps) },
    })),
    overtime: overtimeAsked(model, scenario, { origin, standing, names, gone }),
    programme: {
      ...programme,
      release: RELEASE_TIMES,
      times: Float64Array.from([...standing.map(() => 0), ...entries.map(({ at }) => at - origin)]),
      quantity: Math.max(1, units.length),
      end: end - origin,
      orders: {
        ...programme.orders,
        count: units.length,
        names,
        values,
        dueAt: new Float64Array(units.length).fill(Infinity),
      },
    },
  };
}
