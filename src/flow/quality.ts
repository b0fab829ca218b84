import { REPAIR, SCRAP, SEND_BACK } from './model.js';
import type { Run } from './run.js';
import { IS_INSPECTION, IS_TARGET, type Step } from './step.js';
import { CLEAN, FOUND, OPEN, type Unit } from './unit.js';

/** What an inspection decided for the unit. */
export const PASS = 0, BACK = 1, SCRAPPED = 2;

/** What follows a step: repair work in place, minutes, and then the outcome. */
export interface Verdict {
  outcome: number;
  repairMinutes: number;
  /** Where the unit is sent back to; null unless BACK. */
  target: Step | null;
}

/**
 * Rules 8 and 9, at the end of a step: found items that the step mends are closed, new defects arise, and an inspection
 * or test finds open ones, each with its own chance.
 */
export function judge(run: Run, unit: Unit, step: Step, verdict: Verdict): void {
  verdict.outcome = PASS;
  verdict.repairMinutes = 0;
  verdict.target = null;
  if ((step.flags & IS_TARGET) !== 0 && unit.found > 0) mend(unit, step);
  create(run, unit, step);
  if ((step.flags & IS_INSPECTION) !== 0) inspect(run, unit, step, verdict);
}

function mend(unit: Unit, step: Step): void {
  for (let slot = 0; slot < unit.slots.length; slot++) {
    if (unit.slots[slot] !== FOUND || unit.slotTarget[slot] !== step.id) continue;
    unit.slots[slot] = CLEAN;
    unit.found--;
    unit.notClean--;
  }
}

function create(run: Run, unit: Unit, { id }: Step): void {
  const { createStart, createSlot, createChance, createDraw } = run.model.steps;
  for (let c = createStart[id]; c < createStart[id + 1]; c++) {
    if (run.sampler.next(createDraw[c]) >= chanceFor(run, unit, createChance[c])) continue;
    const slot = createSlot[c];
    run.tally.created[slot]++;
    if (unit.slots[slot] !== CLEAN) continue;
    unit.slots[slot] = OPEN;
    unit.notClean++;
  }
}

function inspect(run: Run, unit: Unit, { id, inspection }: Step, verdict: Verdict): void {
  const { sampler, tally, model: { thens } } = run, { findStart, findSlot, findChance, findDraw, findThen } = run.model.steps;
  let finds = 0;
  for (let f = findStart[id]; f < findStart[id + 1]; f++) {
    const slot = findSlot[f];
    if (slot >= 0 && unit.slots[slot] !== OPEN) continue;
    if (sampler.next(findDraw[f]) >= chanceFor(run, unit, findChance[f])) {
      if (slot >= 0) tally.escaped[inspection]++;
      continue;
    }
    finds++;
    const then = findThen[f];
    switch (thens.kind[then]) {
      case REPAIR:
        verdict.repairMinutes += sampler.next(thens.repairDraw[then]);
        if (slot >= 0) { unit.slots[slot] = CLEAN; unit.notClean--; }
        break;
      case SEND_BACK: sendBack(run, unit, slot, then, verdict); break;
      case SCRAP: verdict.outcome = SCRAPPED; break;
    }
  }
  if (verdict.outcome === SCRAPPED) { verdict.repairMinutes = 0; tally.scrappedAt[inspection]++; }
  if (verdict.outcome === BACK) tally.sentBack[inspection]++;
  if (verdict.repairMinutes > 0) tally.repaired[inspection]++;
  tally.inspected[inspection]++;
  if (unit.seen[inspection] === 0) {
    unit.seen[inspection] = 1;
    tally.firstVisits[inspection]++;
    if (finds === 0) tally.firstPasses[inspection]++;
  }
}

/** Back to the earliest of the steps that the finds of one inspection name; each item is closed by the step that it named. */
function sendBack(run: Run, unit: Unit, slot: number, then: number, verdict: Verdict): void {
  const { thens } = run.model;
  if (unit.loops[then] >= thens.limit[then]) {
    run.tally.limitReached[then]++;
    if (thens.scrapAtLimit[then]) verdict.outcome = SCRAPPED;
    return;
  }
  unit.loops[then]++;
  const target = run.shop.steps[thens.target[then]];
  if (slot >= 0) {
    unit.slots[slot] = FOUND;
    unit.slotTarget[slot] = target.id;
    unit.found++;
  }
  if (verdict.outcome === SCRAPPED) return;
  verdict.outcome = BACK;
  if (verdict.target === null || target.id < verdict.target.id) verdict.target = target;
}

/** A chance by option: the first row that the unit meets, otherwise the usual one. */
function chanceFor(run: Run, unit: Unit, id: number): number {
  const { base, start, option, value, chance } = run.model.chances;
  for (let c = start[id]; c < start[id + 1]; c++) if (unit.options[option[c]] === value[c]) return chance[c];
  return base[id];
}
