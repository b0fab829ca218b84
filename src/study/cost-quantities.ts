import { UNLIMITED, type Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';

const DAY = 1440;
const sum = (values: Iterable<number>): number => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};

/** Changeovers made at a station. */
export function changeoversAt(
  { stations, options }: Model,
  station: number,
): (observation: Observation) => number {
  const first = stations.changeoverStart[station],
    option = stations.changeoverOption[station];
  const pairs = option < 0 ? 0 : options[option].values.length ** 2;
  return ({ changeovers }) => sum(changeovers.subarray(first, first + pairs));
}

export const days = ({ minutes }: Observation): number => minutes / DAY;

export const sendBacks = ({ inspections }: Observation): number => sum(inspections.sentBack);

/** Spaces of limited buffers and banks, and places of stations: floor that is kept free for units. */
export function spaces({ stations, lanes }: Model): number {
  const limited = (counts: Int32Array): number =>
    sum(counts.filter((count) => count >= 0 && count < UNLIMITED));
  return (
    sum(stations.places) + limited(stations.buffer) + limited(stations.reworkBuffer) + limited(lanes.bank)
  );
}
