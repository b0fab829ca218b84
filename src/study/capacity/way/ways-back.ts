import type { Model } from '../../../flow/model/model.js';
import { once, remembered } from '../../../scenario/values/raw.js';
import { rowsOf } from '../../lists.js';

type Ways = ReadonlyMap<number, readonly number[]>;

/** By step that sends units back, then by the step at another site that they go to. */
const waysOf = once(({ steps, thens }: Model): ReadonlyMap<number, Ways> => {
  const ways = new Map<number, Map<number, readonly number[]>>();
  for (let step = 0; step < steps.count; step++)
    for (const find of rowsOf(steps.findStart, step)) {
      const then = steps.findThen[find],
        way: number[] = [];
      for (let at = thens.way[then]; at >= 0 && steps.onTo[at] >= 0; at = steps.onTo[at]) way.push(at);
      if (way.length > 0) remembered(ways, step, () => new Map()).set(thens.target[then], way);
    }
  return ways;
});

/** Steps of the ways by which a step sends units back to another site, by the step that they go to. */
export const waysBackFrom = (model: Model, step: number): Ways => waysOf(model).get(step) ?? NONE;

const NONE: Ways = new Map();

/** The trips on these ways. */
export const tripsBackFrom = (model: Model, step: number): number[] =>
  [...waysBackFrom(model, step).values()].flat().filter((at) => model.steps.lane[at] >= 0);
