import type { Model } from '../flow/model/model.js';
import { CalendarBook } from './calendar/book.js';
import { compileOvertime } from './calendar/overtime.js';
import { Draws } from './lookup/compilation.js';
import { idsOf, layRoutes } from './lookup/ids.js';
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
import { runSpan } from './programme/span.js';
import { Chances } from './steps/chances.js';
import { joiningRoutes, layOutSlots, slotColumns } from './steps/defects.js';
import { compileRoutes } from './steps/feeders.js';
import { Thens } from './steps/finds.js';
import { compileQuality } from './steps/quality.js';
import { compileBeside } from './steps/side-by-side.js';
import { compileSteps } from './steps/steps.js';
import type { Scenario } from './types/scenario.js';
import { compileResources } from './whole/resources.js';

/**
 * The model of a scenario as read and checked. The first `options.length` draws are those of the options, in
 * order. A RangeError says what in the programme cannot be planned; any other error means an unchecked
 * scenario.
 */
export function compile(scenario: Scenario): Model {
  const span = runSpan(scenario),
    book = new CalendarBook(scenario, span),
    ids = idsOf(scenario),
    laid = layRoutes(scenario),
    draws = new Draws(),
    chances = new Chances(ids),
    thens = new Thens(draws, laid),
    slots = layOutSlots(laid);
  const all = {
    scenario,
    span,
    book,
    ids,
    laid,
    draws,
    chances,
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
  const programme = compileProgramme(all);
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
    thens: thens.columns(),
    lanes,
    failures,
    pulseLines: compilePulseLines(all, stations),
    outages: compileOutages(all),
    programme,
  };
}
