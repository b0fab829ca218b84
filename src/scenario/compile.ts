import type { Model } from '../flow/model/model.js';
import { CalendarBook } from './calendar/book.js';
import { compileOvertime } from './calendar/overtime-rules.js';
import { same } from './dated/compare.js';
import { join, NotMidway } from './dated/join.js';
import { stagesOf } from './dated/stages.js';
import { Draws } from './lookup/compilation.js';
import { idsOf } from './lookup/ids.js';
import { layRoutes } from './lookup/laid.js';
import { compileCompanions } from './plant/carriers.js';
import { compileShifts } from './plant/crews.js';
import { hasPlan } from './plant/deliveries.js';
import { compileFailures } from './plant/failures.js';
import { compileLanes } from './plant/lanes.js';
import { compileOutages } from './plant/outages.js';
import { compilePulseLines } from './plant/pulse-lines.js';
import { compileStations } from './plant/stations.js';
import { compileSupplies } from './plant/supplies.js';
import { compileOptions } from './programme/options.js';
import { compileProgramme } from './programme/release.js';
import { type RunSpan, runSpan } from './programme/span.js';
import { Chances, Times } from './steps/chances.js';
import { joiningRoutes, layOutSlots, slotColumns } from './steps/defects.js';
import { compileRoutes } from './steps/feeders.js';
import { Thens } from './steps/finds.js';
import { compileQuality } from './steps/quality.js';
import { compileBeside } from './steps/side-by-side.js';
import { compileSteps } from './steps/steps.js';
import type { Scenario, Stage } from './types/scenario.js';
import { compileResources } from './whole/resources.js';

/**
 * The model of a scenario as read and checked. The first `options.length` draws are those of the options, in
 * order. A RangeError says what in the programme cannot be planned; any other error means an unchecked
 * scenario.
 */
export function compile(scenario: Scenario): Model {
  try {
    return compileStages(scenario);
  } catch (error) {
    if (!(error instanceof NotMidway)) throw error;
    throw new RangeError(
      `costs.changes: expected changes that can come midway, got ${error.message}; leave the date out`,
      { cause: error },
    );
  }
}

/**
 * Why changes cannot come midway, in words such as `fewer places (paint)`; null if they can.
 * @param stages how the scenario is before they are there
 * @throws RangeError where a stage or the scenario cannot be planned at all
 */
export function cannotComeMidway(scenario: Scenario, stages: readonly Stage[]): string | null {
  if (stages.some((stage) => !same(stage.scenario.programme, scenario.programme)))
    return 'another programme, or other options';
  if (stages.some((stage) => !same(stage.scenario.outages, scenario.outages))) return 'other outages';
  try {
    compileStages({ ...scenario, before: stages });
    return null;
  } catch (error) {
    if (error instanceof NotMidway) return error.message;
    throw error;
  }
}

function compileStages(scenario: Scenario): Model {
  const span = runSpan(scenario),
    { last, stages } = stagesOf(scenario, span),
    model = compileOne(last, span);
  if (stages.length === 0) return model;
  return join(
    model,
    stages.map(({ until, scenario: stage }) => ({ until, model: compileOne(stage, span, model.programme) })),
  );
}

/** @param known the programme, where another stage has it */
function compileOne(scenario: Scenario, span: RunSpan, known?: Model['programme']): Model {
  const book = new CalendarBook(scenario, span),
    ids = idsOf(scenario),
    laid = layRoutes(scenario),
    draws = new Draws(),
    chances = new Chances(ids),
    times = new Times(ids, draws),
    thens = new Thens(times, laid),
    slots = layOutSlots(laid);
  const all = {
    scenario,
    span,
    book,
    ids,
    laid,
    draws,
    chances,
    times,
    thens,
    slots,
    joining: joiningRoutes(scenario, laid, ids),
  };

  const options = compileOptions(scenario, draws);
  const stations = compileStations(all);
  const resources = { ...compileResources(all), shifts: compileShifts(all) };
  const companions = compileCompanions(all, resources);
  const steps = compileSteps({ ...all, resources, companions });
  const quality = compileQuality(all, steps);
  const lanes = compileLanes(all);
  const own = compileProgramme({ ...all, steps }),
    programme = known ?? own;
  const failures = compileFailures(all);
  const supplies = compileSupplies(all);
  // A timetable or a plan of deliveries is known no further than the calendars are; an order that is scrapped
  // every time would be built again for ever.
  const isBounded =
    programme.orders.replaceScrapped ||
    book.columns.length > 0 ||
    lanes.timetable.some((times) => times.length > 0) ||
    hasPlan(scenario.supplies);
  return {
    calendars: book.columns,
    horizon: isBounded ? span.horizon : Infinity,
    draws: draws.list,
    siteNames: Object.keys(scenario.sites),
    options,
    overtime: compileOvertime(all, programme),
    stations,
    resources,
    supplies,
    companions,
    sideBySide: compileBeside(all, stations),
    routes: compileRoutes(all),
    steps,
    slots: slotColumns(slots, Object.keys(scenario.defects), laid.steps),
    quality,
    chances: chances.columns(),
    repairTimes: times.columns(),
    thens: thens.columns(),
    lanes,
    failures,
    pulseLines: compilePulseLines(all, stations),
    outages: compileOutages(all),
    programme,
    later: [],
  };
}
