import type { Model } from '../../../flow/model/model.js';
import { HOLD_NONE } from '../../../flow/model/quality.js';
import { REWORK_BOTH, REWORK_ONLY, REWORK_SKIP } from '../../../flow/model/steps.js';
import { remembered } from '../../../scenario/values/raw.js';
import { rowsOf } from '../../lists.js';
import { chanceToMeet, meanChance, meanDraw, meanRepair } from '../means.js';
import { type Build, stockBuild } from '../mix.js';
import { type Joining, joiningAt, type LeftOf } from './carried.js';
import { Inspection } from './inspection.js';
import { mayClaimAt } from './stays.js';
import type { BackStream, Columns } from './streams.js';

/** Something that a step may create. */
export interface Creation {
  readonly slot: number;
  readonly chance: number;
}

/** A step for one build. */
export interface PathStep {
  readonly step: number;
  /** Share of units going forward, and of units in rework, that visit it. */
  readonly forward: number;
  readonly inRework: number;
  readonly created: readonly Creation[];
  readonly joining: readonly Joining[];
  /** HOLD_NONE or another, and the mean work on a noted item without a time of its own. */
  readonly hold: number;
  readonly mend: number;
  /** Place in the path of the inspection it is compared with, -1 none, and the mean extra work. */
  readonly compareWith: number;
  readonly differs: number;
  readonly inspection: Inspection | undefined;
  /** Send-backs that lead here. */
  readonly targetOf: readonly BackStream[];
  /** Every unit visits it and goes on; nothing is found there and nobody is sent to it. */
  readonly isPlain: boolean;
  /** Carriers and teams may be claimed there. */
  readonly mayClaim: boolean;
}

export function layPath(
  model: Model,
  route: number,
  build: Build,
  columns: Columns,
  leftOf: LeftOf,
): PathStep[] {
  const { steps, routes, quality } = model,
    stock = stockBuild(model);
  const own = rowsOf(routes.firstStep, route),
    inspections = own.map((step) =>
      rowsOf(steps.findStart, step).length > 0 ? new Inspection(model, build, step, columns) : undefined,
    );
  const backsTo = new Map<number, BackStream[]>();
  for (const back of inspections.flatMap((inspection) => inspection?.backs ?? []))
    remembered(backsTo, back.target, () => []).push(back);
  return own.map((step, i) => {
    const inspection = inspections[i];
    const met = chanceToMeet(model, build, step) / Math.max(1, steps.sampleN[step]);
    const targetOf = backsTo.get(step) ?? [];
    return {
      step,
      created: rowsOf(steps.createStart, step).map((c) => ({
        slot: steps.createSlot[c],
        chance: meanChance(model, build, steps.createChance[c]),
      })),
      inspection,
      targetOf,
      mayClaim: mayClaimAt(model, step),
      joining: joiningAt(model, step, build, stock, leftOf),
      hold: quality.hold[step],
      mend: meanRepair(model, build, quality.mendTime[step]),
      compareWith: quality.compareWith[step] < 0 ? -1 : quality.compareWith[step] - routes.firstStep[route],
      differs: meanDraw(model, quality.differDraw[step]),
      forward: steps.rework[step] === REWORK_ONLY ? 0 : met,
      inRework: steps.rework[step] === REWORK_SKIP ? 0 : met,
      isPlain:
        met === 1 &&
        steps.rework[step] === REWORK_BOTH &&
        inspection === undefined &&
        targetOf.length === 0 &&
        quality.hold[step] === HOLD_NONE,
    };
  });
}
