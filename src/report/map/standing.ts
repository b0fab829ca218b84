import type { Lane } from '../../scenario/types/plant.js';
import type { Standing } from './signs/glyphs.js';
import type { World } from './world.js';

/** Waiting spaces behind a lane; Infinity without a limit. */
export const arrivalSpaces = ({ arrivalBank = 0 }: Lane): number =>
  arrivalBank === 'unlimited' ? Infinity : arrivalBank;

/** Places and spaces of the station at a cell, and what stands in them; undefined at a trip. */
export function standingAt({ scenario, strip, seen, form }: World, cell: number): Standing | undefined {
  const here = strip.cells[cell],
    what = here?.what;
  if (what?.kind !== 'stop') return undefined;
  const station = scenario.sites[what.site]?.stations[what.station],
    rework = station?.reworkBuffer;
  return {
    places: station?.places ?? 1,
    // Where a station stands again, its spaces are drawn the first time.
    spaces: what.isAgain ? 0 : (station?.buffer ?? Infinity),
    reworkSpaces: what.isAgain || rework === undefined ? 0 : rework === 'unlimited' ? Infinity : rework,
    inPlaces: seen?.station(what.station)?.standing,
    inSpaces: seen?.buffer(what.station)?.mean.mean,
    isInLine: form.columns > 0 && (here?.side ?? -1) >= 0,
    isTest: what.steps.some(({ passes }) => passes !== null),
  };
}
