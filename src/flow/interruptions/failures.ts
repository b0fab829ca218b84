import type { Equipment, FailureMode } from '../floor/equipment.js';
import type { Run } from '../run.js';
import type { Outage } from './disruption.js';
import { comeUp, goDown } from './downtime.js';

/**
 * Rule 13. Equipment of stations, or shared by them, fails by operating time or by the clock and is repaired;
 * dated outages close stations and lanes.
 */

export function beginDisruptions(run: Run): void {
  const {
    disruptions: { modes, outages },
    model,
  } = run;
  for (const mode of modes) if (mode.equipment.isThere) awaitFailure(run, mode);
  for (const { id, source } of outages) run.disruptions.schedule(run.queue, source, model.outages.from[id]);
}

/** The event of a source. */
export function disrupt(run: Run, source: number): void {
  const { disruptions } = run,
    { modes, outages } = disruptions;
  disruptions.scheduled--;
  if (source < modes.length) {
    if (modes[source].isDown) endRepair(run, modes[source]);
    else fail(run, modes[source]);
  } else if (outages[source - modes.length].isOn) endOutage(run, outages[source - modes.length]);
  else beginOutage(run, outages[source - modes.length]);
}

/** Whether the end of a repair or an outage can still set something going when nothing else can. */
export function mayComeUp({ disruptions, shop }: Run): boolean {
  return (
    disruptions.equipment.some((piece) => piece.isDown && isWaitedFor(piece)) ||
    shop.lanes.some(({ closed, bank }) => closed > 0 && bank.waiting > 0)
  );
}

/**
 * Room or a pulse is wanted there, or something is claimed with it, or a unit stands there that is not done;
 * it may be no help, and then that is seen when it is up.
 */
function isWaitedFor({ station, shared, places }: Equipment): boolean {
  if (places.some(({ unit, isDone }) => unit !== null && !isDone)) return true;
  if (station === null) return shared!.pool.waiting > 0;
  return station.line !== null || station.buffer.waiting + station.buffer.shutOut > 0;
}

/** The time to the next failure begins. */
export function awaitFailure(run: Run, mode: FailureMode): void {
  const every = run.sampler.next(run.model.failures.everyDraw[mode.row]);
  if (mode.byClock) run.disruptions.schedule(run.queue, mode.source, run.now + every);
  else mode.left = every;
}

function fail(run: Run, mode: FailureMode): void {
  const { repairDraw, repairCalendar } = run.model.failures,
    { row, equipment, source } = mode;
  if (equipment.next === mode) equipment.next = null;
  mode.isDown = true;
  mode.failedAt = run.now;
  run.disruptions.failures.count[equipment.owner]++;
  goDown(run, equipment);
  run.disruptions.schedule(
    run.queue,
    source,
    run.memory.after(repairCalendar[row], run.sampler.time(repairDraw[row])),
  );
}

function endRepair(run: Run, mode: FailureMode): void {
  const { repairs, minutes, longest } = run.disruptions.failures,
    { owner } = mode.equipment,
    lasted = run.now - mode.failedAt;
  repairs[owner]++;
  minutes[owner] += lasted;
  if (lasted > longest[owner]) longest[owner] = lasted;
  mode.isDown = false;
  awaitFailure(run, mode);
  comeUp(run, mode.equipment);
}

function beginOutage(run: Run, outage: Outage): void {
  outage.isOn = true;
  for (const piece of outage.equipment) goDown(run, piece);
  for (const lane of lanesOf(run, outage)) run.shop.lanes[lane].closed++;
  run.disruptions.schedule(run.queue, outage.source, run.model.outages.to[outage.id]);
}

function endOutage(run: Run, outage: Outage): void {
  outage.isOn = false;
  // The first of several free places of a station is on top again.
  for (const piece of outage.equipment.toReversed()) comeUp(run, piece);
  for (const lane of lanesOf(run, outage))
    if (--run.shop.lanes[lane].closed === 0) run.listServe(run.shop.lanes[lane]);
}

const lanesOf = ({ model: { outages } }: Run, { id }: Outage): Int32Array =>
  outages.lane.subarray(outages.laneStart[id], outages.laneStart[id + 1]);
