import type { Run } from './run.js';
import { changeStock, ownPartBack } from './claims.js';
import { shipped } from './exit.js';
import { firstStep, goIn } from './move.js';

/** Rule 6: sub-assemblies for a stock by a pull loop, and own parts that leave a unit and rejoin it. */

/** Begins as many sub-assemblies as the pull loop of `route` lacks: stock and making together are the target. */
export function feed(run: Run, route: number): void {
  const { routes } = run.model, stock = routes.stock[route];
  if (stock < 0) return;
  while (run.free[stock] + run.making[route] < routes.target[route]) {
    run.making[route]++;
    begin(run, ++run.built[route], route, -1);
  }
}

/** Own parts leave the unit at the end of a step. */
export function takeOff(run: Run, unit: number, step: number): void {
  const { offStart, offRoute } = run.model.steps;
  for (let o = offStart[step]; o < offStart[step + 1]; o++) takeOffOne(run, unit, offRoute[o]);
}

/** One own part of a unit enters its feeder. */
export function takeOffOne(run: Run, unit: number, route: number): void {
  run.making[route]++;
  begin(run, run.units.number[unit], route, unit);
}

/** The route of a unit or a sub-assembly is over. */
export function finishRoute(run: Run, unit: number, route: number): void {
  if (route === 0) shipped(run, unit); else deliver(run, unit, route);
}

/** A sub-assembly is at the end of its feeder: into the stock, or back to its unit. */
function deliver(run: Run, part: number, route: number): void {
  const { units, plan } = run, parent = units.parent[part], stock = run.model.routes.stock[route];
  units.remove(part);
  run.making[route]--;
  if (stock >= 0) changeStock(run, stock, 1);
  else if (parent >= 0) {
    units.ownBack[parent] |= plan.ownBit[route];
    ownPartBack(run, parent);
  }
}

/** The unit is gone: its own parts under way belong to nobody and are put aside at the end of their feeder. */
export function discardPartsOf(run: Run, unit: number): void {
  const { units } = run;
  for (let part = 0; part < units.end; part++) if (units.step[part] >= 0 && units.parent[part] === unit) units.parent[part] = -1;
}

function begin(run: Run, number: number, route: number, parent: number): void {
  const { units } = run, part = units.create(number, run.model.routes.firstStep[route]), options = run.model.options.length;
  units.parent[part] = parent;
  if (parent >= 0) units.options.copyWithin(part * options, parent * options, (parent + 1) * options);
  else units.options.fill(0, part * options, (part + 1) * options);
  const step = firstStep(run, part, route);
  if (step < 0) deliver(run, part, route); else goIn(run, part, step);
}
