import type { Run } from './run.js';
import { REPAIR, SCRAP, SEND_BACK } from './model.js';
import { IS_INSPECTION, IS_TARGET } from './plan.js';
import { CLEAN, FOUND, OPEN } from './units.js';

/** What an inspection decided for the unit. */
export const PASS = 0, BACK = 1, SCRAPPED = 2;

/**
 * Rule 8 and 9, at the end of a step: found items that the step mends are closed, new defects arise, and an inspection
 * or test finds open ones, each with its own chance. `repairMinutes` and `target` tell what follows.
 */
export class Verdict {
  outcome = PASS;
  repairMinutes = 0;
  target = -1;
}

export function judge(run: Run, unit: number, step: number, verdict: Verdict): void {
  const flags = run.plan.stepFlags[step];
  verdict.outcome = PASS;
  verdict.repairMinutes = 0;
  verdict.target = -1;
  if ((flags & IS_TARGET) !== 0 && run.units.found[unit] > 0) mend(run, unit, step);
  create(run, unit, step);
  if ((flags & IS_INSPECTION) !== 0) inspect(run, unit, step, verdict);
}

function mend(run: Run, unit: number, step: number): void {
  const { units } = run, slotCount = run.model.slots.count;
  for (let s = unit * slotCount; s < (unit + 1) * slotCount; s++) {
    if (units.slots[s] !== FOUND || units.slotTarget[s] !== step) continue;
    units.slots[s] = CLEAN;
    units.found[unit]--;
    units.notClean[unit]--;
  }
}

function create(run: Run, unit: number, step: number): void {
  const { units, model, sampler } = run, { createStart, createSlot, createChance, createDraw } = model.steps;
  for (let c = createStart[step]; c < createStart[step + 1]; c++) {
    if (sampler.next(createDraw[c]) >= chanceFor(run, unit, createChance[c])) continue;
    const slot = createSlot[c], at = unit * model.slots.count + slot;
    run.tally.created[slot]++;
    if (units.slots[at] !== CLEAN) continue;
    units.slots[at] = OPEN;
    units.notClean[unit]++;
  }
}

function inspect(run: Run, unit: number, step: number, verdict: Verdict): void {
  const { units, model, sampler, tally, plan } = run, { findStart, findSlot, findChance, findDraw, findThen } = model.steps, { thens } = model;
  const inspection = plan.stepInspection[step], seenAt = unit * plan.inspectionSteps.length + inspection;
  let finds = 0;
  for (let f = findStart[step]; f < findStart[step + 1]; f++) {
    const slot = findSlot[f], at = unit * model.slots.count + slot;
    if (slot >= 0 && units.slots[at] !== OPEN) continue;
    if (sampler.next(findDraw[f]) >= chanceFor(run, unit, findChance[f])) {
      if (slot >= 0) tally.escaped[inspection]++;
      continue;
    }
    finds++;
    const then = findThen[f], kind = thens.kind[then];
    if (kind === REPAIR) {
      verdict.repairMinutes += sampler.next(thens.repairDraw[then]);
      if (slot >= 0) { units.slots[at] = CLEAN; units.notClean[unit]--; }
    } else if (kind === SCRAP) {
      verdict.outcome = SCRAPPED;
    } else if (kind === SEND_BACK) {
      sendBack(run, unit, slot < 0 ? -1 : at, then, verdict);
    }
  }
  if (verdict.outcome === SCRAPPED) { verdict.repairMinutes = 0; tally.scrappedAt[inspection]++; }
  if (verdict.outcome === BACK) tally.sentBack[inspection]++;
  if (verdict.repairMinutes > 0) tally.repaired[inspection]++;
  tally.inspected[inspection]++;
  if (units.seen[seenAt] === 0) {
    units.seen[seenAt] = 1;
    tally.firstVisits[inspection]++;
    if (finds === 0) tally.firstPasses[inspection]++;
  }
}

/** Back to the earliest of the steps that the finds of one inspection name; each item is closed by the step that it named. */
function sendBack(run: Run, unit: number, slotAt: number, then: number, verdict: Verdict): void {
  const { units, model, tally } = run, { thens } = model, loopsAt = unit * thens.count + then;
  if (units.loops[loopsAt] >= thens.limit[then]) {
    tally.limitReached[then]++;
    if (thens.scrapAtLimit[then]) verdict.outcome = SCRAPPED;
    return;
  }
  units.loops[loopsAt]++;
  if (slotAt >= 0) {
    units.slots[slotAt] = FOUND;
    units.slotTarget[slotAt] = thens.target[then];
    units.found[unit]++;
  }
  if (verdict.outcome === SCRAPPED) return;
  verdict.outcome = BACK;
  if (verdict.target < 0 || thens.target[then] < verdict.target) verdict.target = thens.target[then];
}

/** A chance by option: the first row that the unit meets, otherwise the usual one. */
function chanceFor(run: Run, unit: number, id: number): number {
  const { base, start, option, value, chance } = run.model.chances, optionsAt = unit * run.model.options.length;
  for (let c = start[id]; c < start[id + 1]; c++) if (run.units.options[optionsAt + option[c]] === value[c]) return chance[c];
  return base[id];
}
