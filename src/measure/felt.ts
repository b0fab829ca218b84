import type { Run } from '../flow/run.js';

/**
 * What was ever wanting in a replication, over the whole run, warm-up included, 1 or 0; more of all else
 * would have left the run as it was. What is told of buffers stands in `room` of the floor.
 */
export function observeFelt({ shop: { stations, lanes, resources }, sampler }: Run) {
  const yes = <Thing>(things: readonly Thing[], was: (thing: Thing) => boolean): Uint8Array =>
    Uint8Array.from(things, (thing) => Number(was(thing)));
  return {
    /** By station: a unit came and found no place at once. */
    places: yes(stations, ({ buffer }) => buffer.everWaitedFor),
    /** By lane: a load was to go and no truck was there. */
    trucks: yes(lanes, ({ everLackedTruck }) => everLackedTruck),
    /** By resource: a request, a team or work under way was short of it. */
    resources: yes(resources, ({ everLacked }) => everLacked),
    /** By draw: a value of it was taken. */
    draws: sampler.taken,
  };
}
