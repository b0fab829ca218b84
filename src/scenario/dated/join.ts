import type { StageOfModel } from '../../flow/model/later.js';
import type { Model, NamedDraw } from '../../flow/model/model.js';
import { at } from '../lookup/columns.js';
import { CutCalendars } from './calendars.js';
import { MAY_CHANGE } from './columns.js';
import { same, whyNot } from './compare.js';

/** A change that cannot come while a run goes on: the reason in words, such as `fewer places (paint)`. */
export class NotMidway extends Error {}

type Table = Readonly<Record<string, unknown>>;

/**
 * The model of a scenario whose changes come on their dates: the last of the models, with calendars, shifts,
 * timetables and plans cut together, and the others as its stages, which share with it all that is the same.
 * All are compiled with one programme.
 * @throws NotMidway where one cannot become the next
 */
export function join(
  last: Model,
  stages: readonly { readonly until: number; readonly model: Model }[],
): Model {
  const models = [...stages.map(({ model }) => model), last],
    dates = stages.map(({ until }) => until);
  models.slice(1).forEach((next, i) => {
    const reason = whyNot(at(models, i), next);
    if (reason !== null) throw new NotMidway(reason);
  });
  const whole = cut(models, dates, last);
  return {
    ...whole,
    later: stages.map(({ until, model }): StageOfModel => ({ until, parts: changed(whole, model) })),
  };
}

/** Parts of the model with what is not cut of another, where that differs. */
function changed(whole: Model, stage: Model): Partial<Model> {
  const parts = Object.entries(MAY_CHANGE).map(([part, rules]) => {
    const own = stage[part as keyof Model] as unknown as Table,
      shared = whole[part as keyof Model] as unknown as Table;
    const differing = Object.entries(rules).filter(
      ([column, rule]) => rule !== 'cut' && rule !== 'calendar' && !same(own[column], shared[column]),
    );
    return differing.length === 0
      ? []
      : [[part, { ...shared, ...Object.fromEntries(differing.map(([column]) => [column, own[column]])) }]];
  });
  const draws = stage.draws.map((draw, d): NamedDraw => {
    const shared = at(whole.draws, d);
    return same(draw, shared) ? shared : draw;
  });
  return {
    ...(Object.fromEntries(parts.flat()) as Partial<Model>),
    ...(draws.every((draw, d) => draw === whole.draws[d]) ? {} : { draws }),
  };
}

/**
 * What is known for all time: calendars, shifts of crews, timetables, plans of deliveries, looks at rules.
 */
function cut(models: readonly Model[], dates: readonly number[], last: Model): Model {
  const isIn = (time: number, stage: number): boolean =>
    time >= (dates[stage - 1] ?? -Infinity) && time < (dates[stage] ?? Infinity);
  const times = (lists: readonly Float64Array[]): Float64Array =>
    Float64Array.from(lists.flatMap((list, stage) => [...list].filter((time) => isIn(time, stage))));
  const timetable = last.lanes.timetable.map((_, l) =>
    times(models.map(({ lanes }) => at(lanes.timetable, l))),
  );
  const plans = last.supplies.planTimes.map((_, s) =>
    models.flatMap(({ supplies: { planTimes, planLots } }, stage) =>
      [...at(planTimes, s)]
        .map((time, i) => ({ time, lot: at(at(planLots, s), i) }))
        .filter(({ time }) => isIn(time, stage)),
    ),
  );
  const whole = {
    ...last,
    lanes: { ...last.lanes, timetable },
    supplies: {
      ...last.supplies,
      planTimes: plans.map((plan) => Float64Array.from(plan, ({ time }) => time)),
      planLots: plans.map((plan) => Int32Array.from(plan, ({ lot }) => lot)),
    },
  };
  return cutCalendars(whole, models, dates, times);
}

function cutCalendars(
  whole: Model,
  models: readonly Model[],
  dates: readonly number[],
  times: (lists: readonly Float64Array[]) => Float64Array,
): Model {
  const cuts = new CutCalendars(
    models.map(({ calendars }) => calendars),
    dates,
  );
  const cutId = (ids: readonly number[], whose: string): number => {
    const id = cuts.id(ids);
    if (id === undefined) throw new NotMidway(`hours where there were none, or none any more (${whose})`);
    return id;
  };
  const parts = Object.entries(MAY_CHANGE).flatMap(([part, rules]) => {
    const shared = whole[part as keyof Model] as unknown as Table,
      columns = Object.keys(rules).filter((column) => (rules as Table)[column] === 'calendar');
    const made = columns.map((column) => [
      column,
      (shared[column] as Int32Array).map((_, row) =>
        cutId(
          models.map((model) =>
            at((model[part as keyof Model] as unknown as Table)[column] as Int32Array, row),
          ),
          (shared['names'] as readonly string[] | undefined)?.[row] ?? part,
        ),
      ),
    ]);
    return columns.length === 0 ? [] : [[part, { ...shared, ...Object.fromEntries(made) }]];
  });
  const joined = { ...whole, ...(Object.fromEntries(parts) as Partial<Model>) };
  const shifts = whole.resources.shifts.map((own, crew) => {
    if (own === null) return null;
    return cuts.shifts(
      models.map(({ resources }) => at(resources.calendar, crew)),
      models.map(({ resources }) => at(resources.shifts, crew) ?? own),
    );
  });
  const overtime = whole.overtime.map((rule, o) => {
    const alike = models
      .flatMap(({ overtime: [...rules] }) => rules[o] ?? [])
      .filter((other) => isSameRule(other, rule));
    if (alike.length < models.length) throw new NotMidway(`other rules for overtime (${rule.name})`);
    return {
      ...rule,
      calendar: cutId(
        alike.map(({ calendar }) => calendar),
        rule.name,
      ),
      periods: Float64Array.from([...times(alike.map(({ periods }) => periods.slice(0, -1))), Infinity]),
    };
  });
  if (models.some((model) => model.overtime.length !== overtime.length))
    throw new NotMidway('other rules for overtime');
  return { ...joined, resources: { ...joined.resources, shifts }, overtime, calendars: cuts.columns };
}

const isSameRule = (a: Model['overtime'][number], b: Model['overtime'][number]): boolean =>
  a.name === b.name && a.behind === b.behind && a.step === b.step && same(a.due, b.due);
