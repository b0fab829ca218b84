import type { Route, Step } from '../floor/step.js';
import type { Model } from '../model/model.js';
import { FIRST, WHOLE } from '../model/steps.js';
import type { Companion } from './companion.js';
import type { Resource } from './resource.js';

/** What a step claims of one resource. */
export interface Need {
  readonly resource: Resource;
  readonly amount: number;
  /** Of the resource in all that is asked for together. */
  readonly sum: number;
  /** Id of the step that it is for. */
  readonly step: number;
  /** Of equipment: WHOLE, FIRST or LAST, and the draw of how many minutes of work. */
  readonly part: number;
  readonly draw: number;
  /** Stands for one of a part of the work in `place.wanted`; 0 for others. */
  readonly bit: number;
}

/** Tells each step what it claims; what stays with a unit is claimed by the group of steps side by side. */
export function furnishNeeds(
  { steps: { needStart, needResource, needAmount, needPart, needDraw, ownStart, ownRoute } }: Model,
  steps: readonly Step[],
  resources: readonly Resource[],
  routes: readonly Route[],
  companions: readonly Companion[],
): void {
  for (const step of steps) {
    const { id, station, group } = step,
      needs: Need[] = [];
    for (let n = needStart[id]; n < needStart[id + 1]; n++)
      needs.push({
        resource: resources[needResource[n]],
        amount: needAmount[n],
        sum: needAmount[n],
        step: id,
        part: needPart[n],
        draw: needDraw[n],
        bit: needPart[n] === WHOLE ? 0 : 1 << (n - needStart[id]),
      });
    step.asked.want(needs);
    for (const { part, bit } of needs) if (part === FIRST) step.firstParts |= bit;
    if (station?.lotMost === 0 && group === null)
      step.asked.keep(companions.filter(({ from, to }) => from <= id && id <= to));
    for (let n = ownStart[id]; n < ownStart[id + 1]; n++) step.asked.ownParts |= routes[ownRoute[n]].ownBit;
  }
}
