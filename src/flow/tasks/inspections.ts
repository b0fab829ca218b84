import { closeItem, isSought, noteItem, openItem, sendItem } from '../floor/defects.js';
import type { Step } from '../floor/step.js';
import { HOLDS, IS_GROUP, IS_INSPECTION, IS_TARGET } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import { CARRY, FOUND, KNOWN, NOTED, OPEN, PASSED, REPAIR, SCRAP, SEND_BACK } from '../model/quality.js';
import type { Run } from '../run.js';
import { endHold } from './holds.js';
import { chanceFor, meetsConditions, repairTime } from './options.js';

/** What an inspection decided for the unit. */
export const PASS = 0,
  BACK = 1,
  SCRAPPED = 2;

/** What follows a step: repair work in place, minutes, and then the outcome. */
export interface Verdict {
  outcome: number;
  repairMinutes: number;
  /** Where the unit is sent back to; null unless BACK. */
  target: Step | null;
}

/**
 * Rules 8 and 9, at the end of a step: found items that the step mends are closed, new defects arise, and an
 * inspection or test finds open ones, each with its own chance.
 */
export function judge(run: Run, unit: Unit, step: Step, verdict: Verdict): void {
  verdict.outcome = PASS;
  verdict.repairMinutes = 0;
  verdict.target = null;
  if ((step.flags & IS_TARGET) !== 0 && unit.found > 0) mend(unit, step);
  create(run, unit, step);
  // What several steps side by side may make is there when the last of them is done.
  if ((step.flags & IS_GROUP) !== 0)
    for (const each of step.sideSteps) if (meetsConditions(run, unit, each)) create(run, unit, each);
  if ((step.flags & IS_INSPECTION) !== 0) inspect(run, unit, step, verdict);
  if ((step.flags & HOLDS) !== 0) endHold(run, unit, step);
  if (run.witness !== null) run.witness.judged(unit, verdict);
}

function mend(unit: Unit, step: Step): void {
  for (let slot = 0; slot < unit.slots.length; slot++) {
    if (unit.slots[slot] === FOUND && unit.slotTarget[slot] === step.id) closeItem(unit, slot);
  }
}

function create(run: Run, unit: Unit, { id }: Step): void {
  const { createStart, createSlot, createChance, createDraw } = run.model.steps;
  for (let c = createStart[id]; c < createStart[id + 1]; c++) {
    if (run.sampler.next(createDraw[c]) >= chanceFor(run, unit, createChance[c])) continue;
    const slot = createSlot[c];
    run.tally.created[slot]++;
    if (openItem(unit, slot)) run.tally.quality.made[slot]++;
  }
}

/** Repairs of the present inspection, by find: booked when the unit is not scrapped. */
const repairedBy: number[] = [],
  repairMinutes: number[] = [];
let repairs = 0;

function inspect(run: Run, unit: Unit, step: Step, verdict: Verdict): void {
  const { id, inspection } = step,
    {
      sampler,
      tally: { inspections: counts, quality },
      model: { thens },
    } = run,
    { findStart, findSlot, findChance, findDraw, findThen } = run.model.steps;
  let finds = 0;
  repairs = 0;
  for (let f = findStart[id]; f < findStart[id + 1]; f++) {
    const slot = findSlot[f],
      state = slot < 0 ? OPEN : unit.slots[slot];
    if (!isSought(state)) continue;
    if (sampler.next(findDraw[f]) >= chanceFor(run, unit, findChance[f]) && state !== KNOWN) {
      if (slot >= 0) counts.escaped[inspection]++;
      continue;
    }
    finds++;
    if (run.witness !== null) run.witness.found(unit, f, state !== OPEN);
    if (state === OPEN) quality.found[f]++;
    const then = findThen[f];
    switch (thens.kind[then]) {
      case REPAIR:
        repairedBy[repairs] = f;
        verdict.repairMinutes += repairMinutes[repairs++] = repairTime(run, unit, thens.repairTime[then]);
        if (slot >= 0) closeItem(unit, slot);
        break;
      case SEND_BACK:
        sendBack(run, unit, f, verdict);
        break;
      case CARRY:
        noteItem(unit, run.model.quality.findNote[f], NOTED, f);
        break;
      case SCRAP:
        verdict.outcome = SCRAPPED;
        break;
    }
  }
  if (verdict.outcome === SCRAPPED) {
    verdict.repairMinutes = 0;
    counts.scrapped[inspection]++;
  } else for (let r = 0; r < repairs; r++) quality.repairMinutes[repairedBy[r]] += repairMinutes[r];
  if (verdict.outcome === BACK) counts.sentBack[inspection]++;
  if (verdict.repairMinutes > 0) counts.repaired[inspection]++;
  counts.inspected[inspection]++;
  if (unit.seen[inspection] === 0) {
    unit.seen[inspection] = finds === 0 ? 1 : 2;
    counts.firstVisits[inspection]++;
    if (finds === 0) counts.firstPasses[inspection]++;
    compare(run, unit, step, verdict);
  }
}

/**
 * Back to the earliest of the steps that the finds of one inspection name; each item is closed by the step
 * that it named.
 */
function sendBack(run: Run, unit: Unit, find: number, verdict: Verdict): void {
  const {
      thens,
      steps: { findSlot, findThen },
    } = run.model,
    slot = findSlot[find],
    then = findThen[find];
  if (unit.loops[then] >= thens.limit[then]) {
    run.tally.limitReached[then]++;
    if (thens.scrapAtLimit[then]) verdict.outcome = SCRAPPED;
    else noteItem(unit, run.model.quality.findNote[find], slot < 0 ? NOTED : PASSED, find);
    return;
  }
  unit.loops[then]++;
  const target = run.shop.steps[thens.target[then]];
  if (slot >= 0) sendItem(unit, slot, target.id);
  if (verdict.outcome === SCRAPPED) return;
  verdict.outcome = BACK;
  if (verdict.target === null || target.id < verdict.target.id) verdict.target = target;
}

/**
 * A second measurement beside an earlier one, first visits of both; where they differ, extra work before the
 * verdict is followed.
 */
function compare(run: Run, unit: Unit, { id, inspection }: Step, verdict: Verdict): void {
  const { compareWith, differDraw } = run.model.quality,
    { quality } = run.tally;
  if (compareWith[id] < 0) return;
  const earlier = unit.seen[run.shop.steps[compareWith[id]].inspection],
    here = unit.seen[inspection];
  if (earlier === 0) return;
  quality.compared[4 * inspection + 2 * (earlier - 1) + here - 1]++;
  if (earlier === here || differDraw[id] < 0) return;
  const minutes = run.sampler.next(differDraw[id]);
  quality.differMinutes[inspection] += minutes;
  verdict.repairMinutes += minutes;
}
