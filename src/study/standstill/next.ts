import type { Model } from '../../flow/model/model.js';
import { HOLD_NOTED, SEND_BACK } from '../../flow/model/quality.js';
import { REWORK_BOTH } from '../../flow/model/steps.js';
import { remembered } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';

/** A step to which a unit may go; `find`: the row of the find that sends it back there, -1: none. */
export interface Next {
  readonly step: number;
  readonly find: number;
}

export interface Nexts {
  readonly after: (step: number) => readonly Next[];
  /** Steps from which a unit may go there. */
  readonly before: (step: number) => readonly number[];
  /** The step and, of a group, those done side by side in it. */
  readonly withSides: (step: number) => readonly number[];
  /** Steps at which a carrier or a team may be claimed; `isAgain`: by one who has given it back. */
  readonly claims: (companion: number) => readonly { readonly step: number; readonly isAgain: boolean }[];
}

/**
 * So many steps that a unit may pass over are looked at from each: what lies farther ahead is reached by way
 * of them.
 */
const MOST_AHEAD = 24;

/** Where units may go from each step, whatever its conditions and samples. */
export function nextOf(model: Model): Nexts {
  const { steps, thens, companions, sideBySide } = model,
    { group } = sideBySide;
  const isSure = (step: number): boolean =>
    steps.sampleN[step] === 0 &&
    steps.whenStart[step] === steps.whenStart[step + 1] &&
    steps.rework[step] === REWORK_BOTH &&
    model.quality.hold[step] !== HOLD_NOTED;
  const ahead = (step: number): number[] => {
    const found: number[] = [];
    for (let to = step + 1; to < steps.count && steps.route[to] === steps.route[step]; to++) {
      if (group[to] >= 0) continue;
      if (found.length >= MOST_AHEAD) break;
      found.push(to);
      if (isSure(to)) break;
    }
    return found;
  };
  const back = (step: number): Next[] =>
    rowsOf(steps.findStart, step).flatMap((find) => {
      const then = steps.findThen[find];
      return thens.kind[then] === SEND_BACK && mayBe(model, steps.findChance[find])
        ? [{ step: thens.target[then], find }]
        : [];
    });
  const sides = new Map<number, number[]>();
  group.forEach((of, step) => {
    if (of >= 0) remembered(sides, of, () => []).push(step);
  });
  const all = Array.from({ length: steps.count }, (_, step) => back(step));
  const after = all.map((backs, step): Next[] => [
    ...ahead(step).map((to) => ({ step: to, find: -1 })),
    ...backs,
  ]);
  return {
    after: (step) => after[step],
    before: (step) =>
      after.flatMap((nexts, from) => (group[from] < 0 && nexts.some((to) => to.step === step) ? [from] : [])),
    withSides: (step) => [step, ...(sides.get(step) ?? [])],
    claims: (id) => {
      const from = companions.from[id],
        to = companions.to[id],
        claims = new Map<number, boolean>();
      // The first that it does, and those that it does if it has passed over the ones before.
      for (let step = from; step <= to; step++) {
        if (group[step] >= 0) continue;
        if (steps.station[step] >= 0) claims.set(step, false);
        if (isSure(step)) break;
      }
      if (companions.again[id] === 1)
        for (let step = to + 1; step < steps.count && steps.route[step] === steps.route[from]; step++)
          for (const { step: target } of all[step])
            if (from < target && target <= to && steps.station[target] >= 0 && !claims.has(target))
              claims.set(target, true);
      return Array.from(claims, ([step, isAgain]) => ({ step, isAgain }));
    },
  };
}

function mayBe({ chances }: Model, chance: number): boolean {
  return chances.base[chance] > 0 || rowsOf(chances.start, chance).some((row) => chances.chance[row] > 0);
}
