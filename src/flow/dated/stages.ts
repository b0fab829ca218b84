import { modelAt } from '../model/later.js';
import type { Model } from '../model/model.js';
import type { Run } from '../run.js';
import { bringClaimed, goBySupplies, withholdClaimed } from './claimed.js';
import { bringPlaces, resizeBuffers, reviseWork, withholdPlaces } from './floor.js';
import { bringTrucks, reviseLanes, withholdTrucks } from './lanes.js';

/**
 * Changes that take effect on their date. A run is built with the most of everything, as it is when all
 * changes are there, and begins without what is still to come. At the date, after all that happens at this
 * very instant, what comes is put to use. Whatever is read from `run.model` when it is wanted (chances, rules
 * of departure, batches, factors) follows by itself, since that is then the model of the next stage; what is
 * kept elsewhere is set anew here. What is under way goes on as it was begun.
 */

/** Before anything happens: what is to come is not there. */
export function beginStages(run: Run): void {
  const { whole } = run,
    { later } = whole;
  if (later.length === 0) return;
  const model = modelAt(whole, 0);
  withholdPlaces(run, model);
  withholdClaimed(run, whole, model);
  withholdTrucks(run, model);
  enter(run, whole, model);
}

/** The clock stands at the date of a change. */
export function changeStage(run: Run): void {
  const { whole, model: before } = run,
    next = modelAt(whole, ++run.stage);
  enter(run, before, next);
  bringClaimed(run, before, next);
  bringPlaces(run, next);
  bringTrucks(run, next);
}

/** All that is set the same way at the start and later. */
function enter(run: Run, before: Model, next: Model): void {
  run.model = next;
  const { programme, horizon, later } = run.whole,
    until = later[run.stage]?.until ?? Infinity;
  run.changesAt = until < Math.min(programme.end, horizon) ? until : Infinity;
  if (next.draws !== before.draws)
    next.draws.forEach(({ distribution }, i) => {
      if (distribution !== before.draws[i].distribution) run.sampler.change(i, distribution);
    });
  goBySupplies(run, before, next);
  resizeBuffers(run, before, next);
  reviseWork(run, before, next);
  reviseLanes(run, before, next);
}
