import { CARRIER, CREW, type Model } from '../flow/model.js';
import { ALWAYS, type CalendarBook } from './calendar-book.js';
import { column } from './compile-columns.js';
import { NO_DRAW, type Draws } from './compile-draws.js';
import { found, siteOf, type Names } from './compile-names.js';
import type { LaidRoutes } from './compile-route.js';
import type { Scenario } from './scenario.js';

/** Carriers, then teams, each in the order of the scenario. */
export function compileStays(
  scenario: Scenario,
  names: Names,
  laid: LaidRoutes,
  resources: Model['resources'],
  book: CalendarBook,
  draws: Draws,
): Model['stays'] {
  const siteOfStep = (name: string): string => {
    const step = laid.steps[found(laid.stepId, name, 'step')];
    if (step.kind !== 'step')
      throw new Error(
        `expected a step at a station, saw '${name}'; the scenario must be checked before it is compiled`,
      );
    return found(names.siteOfStation, step.step.at, 'station');
  };
  const carriers = Object.entries(scenario.carriers).map(([name, { from, to, return: back, hours }]) => ({
    name,
    from,
    to,
    amount: 1,
    resource: resources.names.findIndex((each, r) => each === name && resources.kind[r] === CARRIER),
    returnDraw: draws.add(`${name}/return`, back),
    returnCalendar: book.id(hours, siteOf(scenario, siteOfStep(to)).zone),
  }));
  const teams = Object.entries(scenario.teams).map(([name, { from, to, crew, people }]) => ({
    name,
    from,
    to,
    amount: people,
    resource: names.crew(siteOfStep(from), crew),
    returnDraw: NO_DRAW,
    returnCalendar: ALWAYS,
  }));
  const rows = [...carriers, ...teams];
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    resource: column(rows, (row) => row.resource),
    amount: column(rows, (row) => row.amount),
    from: column(rows, (row) => found(laid.stepId, row.from, 'step')),
    to: column(rows, (row) => found(laid.stepId, row.to, 'step')),
    returnDraw: column(rows, (row) => row.returnDraw),
    returnCalendar: column(rows, (row) => row.returnCalendar),
  };
}

/** Calendars of the teams that are with a unit at a step: the work of the step goes on in their hours only. */
export function teamCalendars(
  { stays, resources }: Pick<Model, 'stays' | 'resources'>,
  step: number,
): number[] {
  return [...stays.resource].flatMap((resource, s) =>
    resources.kind[resource] === CREW && stays.from[s] <= step && step <= stays.to[s]
      ? [resources.calendar[resource]]
      : [],
  );
}
