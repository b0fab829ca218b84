import { INK } from '../../style.js';
import { type Group, polyline, type Shape } from '../shapes.js';
import type { Told } from '../told.js';
import { laneTexts, whenText } from '../words.js';
import type { World } from '../world.js';
import { block, type Frame } from './frame.js';
import { bankLength, drawBank } from './glyphs.js';
import { WAY_STROKE } from './side-lines.js';

/** What is written at the lane of a cell. */
export function laneTold({ scenario, strip, seen }: World, cell: number): Told[] {
  const trip = strip.cells[cell]?.what;
  if (trip?.kind !== 'trip') return [];
  const lane = scenario.lanes[trip.lane];
  if (lane === undefined) return [];
  const use = seen?.laneUse(trip.lane),
    isStopped =
      ['lane', 'room'].includes(seen?.stops?.thing.kind ?? '') && seen?.stops?.thing.name === trip.lane;
  const isFor = whensOf(scenario.route, trip.lane);
  return [
    { kind: 'name', text: trip.lane },
    ...(isFor === '' ? [] : [{ kind: 'step' as const, text: `for ${isFor}` }]),
    ...laneTexts(lane, trip).map((words) => ({ kind: 'step' as const, text: words })),
    ...(use === undefined
      ? []
      : [{ kind: 'use' as const, share: use, text: `${Math.round(100 * use)} %`, more: 'trucks busy' }]),
    ...(isStopped ? [{ kind: 'stops' as const, text: seen?.stops?.text ?? '' }] : []),
  ];
}

function whensOf(route: World['scenario']['route'], name: string): string {
  const when = route.flatMap((each) =>
    each.kind === 'lane' && each.lane === name ? [whenText(each.when)] : [],
  );
  return when.length === 1 ? (when[0] ?? '') : '';
}

/** The road between two plants, with the spaces of its banks, from `first` to `last` of a frame. */
export function drawLane(world: World, cell: number, frame: Frame, first: number, last: number): Group {
  const trip = world.strip.cells[cell]?.what,
    name = trip?.kind === 'trip' ? trip.lane : '',
    lane = world.scenario.lanes[name],
    bank = lane?.bank ?? (lane === undefined ? 0 : Infinity),
    arrival = lane?.arrivalBank ?? 0,
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
    about: name,
    shapes: [
      line(first, last - 4, 0, WAY_STROKE),
      block(frame, (from + to) / 2, 0, to - from, 11, { fill: '#ffffff' }),
      line(from, to, 5.5, 1.4),
      line(from, to, -5.5, 1.4),
      line(from + 4, to - 4, 0, 1, [6, 5]),
      ...drawBank(frame, first + 8, bank, world.seen?.waiting(`${name}: bank`)),
      ...drawBank(frame, to + 4, arrival, world.seen?.waiting(`${name}: arrival bank`)),
      {
        kind: 'path',
        d: polyline([frame.at(last, 0), frame.at(last - 7, 5), frame.at(last - 7, -5)], ' Z'),
        fill: INK,
      },
    ],
  };
}
