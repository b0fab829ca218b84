import { CREW, type Model } from '../flow/model.js';
import type { Demand } from './capacity-demand.js';

/**
 * Minutes that steps side by side keep their place, per unit released, and those with people: a lower bound. It is the mean
 * of the longest of them (the mean of the longest time is more, by chance), or what the people who may be there at once need.
 */
export function groupMinutes(
  { steps, beside, resources }: Model,
  asks: Demand,
  group: number,
): { readonly place: number; readonly attended: number } {
  let place = 0,
    attended = 0,
    peopleMinutes = 0;
  for (let step = group + 1; step < steps.count && beside.group[step] === group; step++) {
    const minutes = asks.attended[step] + asks.unattended[step];
    place = Math.max(place, minutes);
    attended = Math.max(attended, asks.attended[step]);
    for (let n = steps.needStart[step]; n < steps.needStart[step + 1]; n++)
      if (resources.kind[steps.needResource[n]] === CREW) peopleMinutes += steps.needAmount[n] * minutes;
  }
  return { place: Math.max(place, peopleMinutes / beside.people[steps.station[group]]), attended };
}
