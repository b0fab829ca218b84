import { count, number } from '../../study/format.js';
import { SHIFT_STATES, type ShiftState, shareIn } from '../../study/sections/stations.js';
import { standingAt } from './standing.js';
import { isStop } from './strip.js';
import { marksAt } from './told.js';
import { laneTexts, stepInFull } from './words.js';
import type { World } from './world.js';

/**
 * All that is known of a place of the strip, a line each, its name first: what is done, places and spaces,
 * and after a run use, units standing, what its places wait for.
 */
export function aboutCell(world: World, cell: number): string {
  const what = world.strip.cells[cell]?.what;
  if (what === undefined) return '';
  const marks = marksAt(world, cell);
  return (
    isStop(what)
      ? [
          what.station,
          ...what.steps.map(stepInFull),
          roomText(world, cell),
          ...stationFigures(world, what.station),
          ...marks,
        ]
      : [what.lane, ...laneFigures(world, cell), ...marks]
  ).join('\n');
}

/** `1 place, 14 spaces ahead`. */
function roomText(world: World, cell: number): string {
  const { places = 0, spaces = 0, reworkSpaces = 0 } = standingAt(world, cell) ?? {},
    text = (of: number, where: string): string[] =>
      of <= 0 ? [] : [`${of === Infinity ? 'spaces without limit' : count(of, 'space')} ${where}`];
  return [
    count(places, 'place'),
    ...text(spaces, 'ahead'),
    ...text(reworkSpaces, 'for units sent back'),
  ].join(', ');
}

/** States in which nothing is done to a unit. */
const WAITS = SHIFT_STATES.filter(
  (state) => state !== 'working' && state !== 'changeover' && state !== 'unattended',
);
/** Shares below half a per cent are not told. */
const LEAST = 0.005;

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const units = (many: number): string => (many < 0.05 ? 'hardly any unit' : `${many.toFixed(1)} units`);

function stationFigures({ seen }: World, name: string): string[] {
  const here = seen?.station(name),
    lines: string[] = [];
  if (here !== undefined) {
    const shareOf = (state: ShiftState): number => shareIn(here.shares, state),
      waits = WAITS.filter((state) => shareOf(state) >= LEAST).sort((a, b) => shareOf(b) - shareOf(a));
    lines.push(
      `in use ${percent(here.use)} of the hours on shift, ${units(here.standing)} in its places on average`,
      ...(waits.length === 0
        ? []
        : [`not in use: ${waits.map((state) => `${state} ${percent(shareOf(state))}`).join(', ')}`]),
    );
  }
  return [...lines, ...bufferFigures(seen, name, 'ahead')];
}

function bufferFigures(seen: World['seen'], name: string, where: string): string[] {
  const here = seen?.buffer(name);
  if (here === undefined) return [];
  const { mean, full } = here,
    many = units(mean.mean),
    isFull = full !== null && full.mean >= LEAST;
  return [
    `${many} ${many.endsWith('units') ? 'wait' : 'waits'} ${where} on average` +
      (isFull ? `, no space free ${percent(full.mean)} of the time` : ''),
  ];
}

function laneFigures({ scenario, strip, seen }: World, cell: number): string[] {
  const trip = strip.cells[cell]?.what;
  if (trip?.kind !== 'trip') return [];
  const lane = scenario.lanes[trip.lane],
    here = seen?.lane(trip.lane);
  return [
    ...(lane === undefined ? [] : laneTexts(lane, trip)),
    ...(here === undefined
      ? []
      : [
          `trucks busy ${percent(here.truckBusy.mean)} of the time, free ${percent(here.truckFree.mean)}, ` +
            `waiting for room ahead ${percent(here.truckBlocked.mean)}; ${percent(here.fill.mean)} full`,
          `a unit waits ${number(here.waitHours.mean)} h for its truck`,
        ]),
    ...bufferFigures(seen, `${trip.lane}: bank`, 'for loading'),
    ...bufferFigures(seen, `${trip.lane}: arrival bank`, 'after unloading'),
  ];
}
