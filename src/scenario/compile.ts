import type { Model } from '../flow/model/model.js';
import { CalendarBook } from './calendar/book.js';
import { compileBeside } from './work/side-by-side.js';
import { compileStays } from './plant/carriers.js';
import { Chances, layOutSlots, slotColumns, Thens } from './work/defects.js';
import { Draws } from './whole/draws.js';
import { compileFailures, compileOutages } from './plant/failures.js';
import { compileLanes } from './plant/lanes.js';
import { names } from './whole/ids.js';
import { compileOvertime, compileShifts } from './plant/crews.js';
import { compilePulseLines } from './plant/pulse-lines.js';
import { compileOptions, compileProgramme } from './programme/programme.js';
import { compileQuality, joiningRoutes } from './work/quality.js';
import { compileResources, compileRoutes } from './plant/resources.js';
import { layRoutes } from './work/route.js';
import { runSpan } from './programme/span.js';
import { compileStations } from './plant/stations.js';
import { compileSteps } from './work/steps-compiled.js';
import { compileSupplies, hasPlan } from './plant/supplies.js';
import type { Scenario } from './types/scenario.js';

/**
 * The model of a scenario as read and checked. The first `options.length` draws are those of the options, in
 * order. A RangeError says what in the programme cannot be planned; any other error means an unchecked
 * scenario.
 */
export function compile(scenario: Scenario): Model {
  const span = runSpan(scenario);
  const book = new CalendarBook(scenario, span);
  const ids = names(scenario);
  const laid = layRoutes(scenario);
  const draws = new Draws();
  const chances = new Chances(ids);
  const thens = new Thens(draws, laid);
  const slots = layOutSlots(laid);
  const joining = joiningRoutes(laid, ids);

  const options = compileOptions(scenario, draws);
  const stations = compileStations(scenario, ids, book, draws);
  const resources = {
    ...compileResources(scenario, ids, book),
    shifts: compileShifts(scenario, book, draws),
  };
  const stays = compileStays(scenario, ids, laid, resources, book, draws);
  const steps = compileSteps({
    scenario,
    names: ids,
    book,
    draws,
    laid,
    slots,
    joining,
    chances,
    thens,
    resources,
    stays,
  });
  const quality = compileQuality(laid, slots, joining, steps, draws);
  const lanes = compileLanes(scenario, ids, book, draws, span);
  const programme = compileProgramme(scenario, ids, laid, book, draws, span);
  const failures = compileFailures(scenario, ids, book, draws);
  const supplies = compileSupplies(scenario, ids, book, draws, span);
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
    overtime: compileOvertime(scenario, book, laid, programme),
    stations,
    resources,
    supplies,
    stays,
    beside: compileBeside(scenario, laid, stations),
    routes: compileRoutes(scenario, ids, laid),
    steps,
    slots: slotColumns(slots, Object.keys(scenario.defects), laid.steps),
    quality,
    chances: chances.columns(),
    thens: thens.columns(),
    lanes,
    failures,
    pulseLines: compilePulseLines(scenario, ids, stations),
    outages: compileOutages(scenario, ids, book, span),
    programme,
  };
}
