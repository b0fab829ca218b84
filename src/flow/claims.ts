import type { Run } from './run.js';
import { SHORT_CREW, SHORT_PARTS, WAIT_REPAIR } from './states.js';

/**
 * Rule 2. What a step needs is claimed together, all or none, by the place where the unit stands. Requests wait in the
 * order of rule 1 (units sent back, then first come, then build number). One that cannot be met lets later ones pass
 * only if they want none of what it lacks.
 */

/** Asks for the needs of the step at `place`; true if they are granted at once, otherwise the place waits and is short. */
export function request(run: Run, place: number): boolean {
  const { places, plan, units } = run, step = units.step[places.unit[place]], pool = plan.stepPool[step];
  if (run.poolWaiting[pool] === 0 && lacking(run, place, false) < 0) { take(run, place); return true; }
  places.askedAt[place] = run.now;
  places.enterIdle(place, lacking(run, place, false) === SHORT_PARTS ? SHORT_PARTS : SHORT_CREW);
  insert(run, pool, place);
  run.toMatch.add(pool);
  return false;
}

/** Goes through the waiting requests of a pool in order; those met are put on `run.granted`. */
export function match(run: Run, pool: number): void {
  const { places } = run;
  run.scan++;
  let before = -1, place = run.poolHead[pool];
  while (place >= 0) {
    const next = places.nextWaiting[place], short = lacking(run, place, true);
    if (short < 0) {
      if (before < 0) run.poolHead[pool] = next; else places.nextWaiting[before] = next;
      run.poolWaiting[pool]--;
      take(run, place);
      run.granted[run.grantedCount++] = place;
    } else {
      places.enterIdle(place, short);
      before = place;
    }
    place = next;
  }
}

/** Gives the crew of the step at `place` back. */
export function releaseCrew(run: Run, place: number): void {
  const { places, model, plan } = run;
  if (places.holdsCrew[place] === 0) return;
  places.holdsCrew[place] = 0;
  const { needStart, needResource, needAmount } = model.steps, step = run.units.step[places.unit[place]];
  for (let n = needStart[step]; n < needStart[step + 1]; n++) {
    const resource = needResource[n];
    if (resource >= model.resources.crews) continue;
    changeCrew(run, resource, needAmount[n]);
    if (run.poolWaiting[plan.resourcePool[resource]] > 0) run.toMatch.add(plan.resourcePool[resource]);
  }
}

/** Units of stock arrive, or are taken (negative). */
export function changeStock(run: Run, resource: number, amount: number): void {
  settleStock(run, resource);
  run.free[resource] += amount;
  const pool = run.plan.resourcePool[resource];
  if (amount > 0 && run.poolWaiting[pool] > 0) run.toMatch.add(pool);
}

/** The own part of a unit is back: the place where it waits for it, if any, is looked at again. */
export function ownPartBack(run: Run, unit: number): void {
  const step = run.units.step[unit];
  const pool = step < 0 ? -1 : run.plan.stepPool[step];
  if (pool >= 0 && run.poolWaiting[pool] > 0) run.toMatch.add(pool);
}

/** Brings the accounts of crews and stocks up to now. */
export function settleResources(run: Run): void {
  for (let r = 0; r < run.model.resources.count; r++) {
    if (r < run.model.resources.crews) changeCrew(run, r, 0);
    else settleStock(run, r);
  }
}

/** The state of shortage in which the request stands; -1 if it can be met. With `marking`, what it lacks is marked as scarce for later ones. */
export function lacking(run: Run, place: number, marking: boolean): number {
  const { places, model, units, plan } = run, unit = places.unit[place], step = units.step[unit];
  const { needStart, needResource, needAmount, ownStart, ownRoute } = model.steps, crews = model.resources.crews;
  const repairOnly = places.phase[place] === WAIT_REPAIR;
  let short = -1;
  for (let n = needStart[step]; n < needStart[step + 1]; n++) {
    const resource = needResource[n];
    if (repairOnly && resource >= crews) continue;
    const passedOver = marking && run.scarce[resource] === run.scan;
    if (run.free[resource] >= needAmount[n] && !passedOver) continue;
    if (marking) run.scarce[resource] = run.scan;
    short = resource >= crews ? SHORT_PARTS : short < 0 ? SHORT_CREW : short;
  }
  if (!repairOnly) {
    for (let n = ownStart[step]; n < ownStart[step + 1]; n++) if ((units.ownBack[unit] & plan.ownBit[ownRoute[n]]) === 0) short = SHORT_PARTS;
  }
  return short;
}

function take(run: Run, place: number): void {
  const { places, model, units, plan } = run, unit = places.unit[place], step = units.step[unit];
  const { needStart, needResource, needAmount, ownStart, ownRoute } = model.steps, crews = model.resources.crews;
  const repairOnly = places.phase[place] === WAIT_REPAIR;
  for (let n = needStart[step]; n < needStart[step + 1]; n++) {
    const resource = needResource[n];
    if (resource < crews) { changeCrew(run, resource, -needAmount[n]); places.holdsCrew[place] = 1; }
    else if (!repairOnly) { changeStock(run, resource, -needAmount[n]); run.toFeed.add(plan.resourceRoute[resource]); }
  }
  if (!repairOnly) for (let n = ownStart[step]; n < ownStart[step + 1]; n++) units.ownBack[unit] &= ~plan.ownBit[ownRoute[n]];
}

/** Engaged time is counted while the crew is on shift. */
function changeCrew(run: Run, crew: number, change: number): void {
  const { resources } = run.model, headcount = resources.amount[crew], engaged = headcount - run.free[crew];
  if (engaged > 0) run.engaged[crew] += engaged * run.worked(resources.calendar[crew], run.engagedSince[crew], run.now);
  run.engagedSince[crew] = run.now;
  if (change === 0) return;
  const before = run.free[crew];
  run.free[crew] += change;
  if (before > 0 && run.free[crew] === 0) run.crewActive.begin(crew);
  else if (before === 0 && run.free[crew] > 0) run.crewActive.finish(crew);
}

function settleStock(run: Run, resource: number): void {
  const elapsed = run.now - run.engagedSince[resource];
  run.engagedSince[resource] = run.now;
  run.stockArea[resource] += run.free[resource] * elapsed;
  if (run.free[resource] === 0) run.stockOut[resource] += elapsed;
}

function insert(run: Run, pool: number, place: number): void {
  const { places } = run;
  let before = -1, after = run.poolHead[pool];
  while (after >= 0 && goesBefore(run, after, place)) { before = after; after = places.nextWaiting[after]; }
  places.nextWaiting[place] = after;
  if (before < 0) run.poolHead[pool] = place; else places.nextWaiting[before] = place;
  run.poolWaiting[pool]++;
}

function goesBefore(run: Run, a: number, b: number): boolean {
  const { places, units } = run, unitA = places.unit[a], unitB = places.unit[b];
  const reworkA = units.rework[unitA] > 0, reworkB = units.rework[unitB] > 0;
  if (reworkA !== reworkB) return reworkA;
  if (places.askedAt[a] !== places.askedAt[b]) return places.askedAt[a] < places.askedAt[b];
  if (units.number[unitA] !== units.number[unitB]) return units.number[unitA] < units.number[unitB];
  return a < b;
}
