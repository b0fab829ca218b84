import { INK } from '../../style.js';
import { aboutCell } from '../about.js';
import { type Group, polyline, type Shape } from '../shapes.js';
import { arrivalSpaces } from '../standing.js';
import type { World } from '../world.js';
import { block, type Frame } from './frame.js';
import { bankLength, drawBank } from './glyphs.js';
import { WAY_STROKE } from './side-lines.js';

/** The road between two plants, with the spaces of its banks, from `first` to `last` of a frame. */
export function drawLane(world: World, cell: number, frame: Frame, first: number, last: number): Group {
  const trip = world.strip.cells[cell]?.what,
    name = trip?.kind === 'trip' ? trip.lane : '',
    lane = world.scenario.lanes[name],
    bank = lane?.bank ?? (lane === undefined ? 0 : Infinity),
    arrival = lane === undefined ? 0 : arrivalSpaces(lane),
    from = first + 8 + bankLength(frame, bank) + 4,
    to = last - 14 - bankLength(frame, arrival);
  const line = (a: number, b: number, c: number, strokeWidth: number, dash?: readonly number[]): Shape => ({
    kind: 'path',
    d: polyline([frame.at(a, c), frame.at(b, c)]),
    stroke: INK,
    strokeWidth,
    fill: 'none',
    ...(dash === undefined ? {} : { dash }),
  });
  return {
    kind: 'lane',
    about: aboutCell(world, cell),
    place: cell,
    shapes: [
      line(first, last - 4, 0, WAY_STROKE),
      block(frame, (from + to) / 2, 0, to - from, 11, { fill: '#ffffff' }),
      line(from, to, 5.5, 1.4),
      line(from, to, -5.5, 1.4),
      line(from + 4, to - 4, 0, 1, [6, 5]),
      ...drawBank(frame, first + 8, bank, world.seen?.buffer(`${name}: bank`)?.mean.mean),
      ...drawBank(frame, to + 4, arrival, world.seen?.buffer(`${name}: arrival bank`)?.mean.mean),
      {
        kind: 'path',
        d: polyline([frame.at(last, 0), frame.at(last - 7, 5), frame.at(last - 7, -5)], ' Z'),
        fill: INK,
      },
    ],
  };
}
