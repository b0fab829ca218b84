import type { Thing } from '../../scenario/reliefs/thing.js';
import type { Trip } from '../../study/route/types.js';
import { shareIn } from '../../study/sections/stations.js';
import { othersText } from './found.js';
import { joinsSpot } from './strip.js';
import { byText, inHundred, laneTexts, rhythm, stepText, whenText } from './words.js';
import type { World } from './world.js';

/** A text beside a mark, before it is broken into lines. */
export interface Told {
  readonly kind: 'side' | 'name' | 'step' | 'share' | 'stub' | 'use' | 'bracket' | 'stops' | 'mark';
  readonly text: string;
  /** Of `use`: 0..1, and what is said behind it. */
  readonly share?: number | undefined;
  readonly more?: string | undefined;
}

interface SentBack {
  readonly from: string;
  readonly to: string;
  readonly chance: number;
}

/** What is written at a cell, the line it belongs to first. `site`: the plant in which it is drawn. */
export function toldAt(world: World, cell: number, site: string): Told[] {
  const { scenario, strip, seen } = world,
    here = strip.cells[cell];
  if (here === undefined) return [];
  const side = strip.sides[here.side],
    told: Told[] = [];
  if (side !== undefined && side.cells[0] === cell)
    told.push({
      kind: 'side',
      text:
        side.line.kind === 'own'
          ? `${side.line.name}, off this unit`
          : `${side.line.name}, ${sideTarget(world, side.line.name)}`,
    });
  if (here.what.kind === 'trip') return [...told, ...laneTold(world, here.what, cell)];
  const { station, steps, isAgain } = here.what,
    supplies: Told[] = [];
  told.push({ kind: 'name', text: isAgain ? `${station}, again` : station });
  if (here.what.site !== site) told.push({ kind: 'step', text: `in ${here.what.site}` });
  for (const { step, isBeside, passes } of steps) {
    told.push({ kind: 'step', text: isBeside ? `and ${stepText(step)}` : stepText(step) });
    if (passes !== null)
      told.push({
        kind: 'share',
        text: `${inHundred(seen?.passes(here.what.site, step.name) ?? passes)} pass`,
      });
    if (passes !== null)
      for (const text of othersText(step, seen?.found(here.what.site, step.name)))
        told.push({ kind: 'share', text });
    for (const part of Object.keys(step.parts)) {
      const supply = scenario.supplies[part];
      if (supply !== undefined) supplies.push({ kind: 'stub', text: `${part}: ${rhythm(supply)}` });
      else if (!joinsSpot(strip, part, cell)) supplies.push({ kind: 'stub', text: `${part}, as before` });
    }
  }
  if (here.side >= 0)
    for (const back of side?.line.backs ?? [])
      if (back.fromEntry === here.entry)
        told.push({
          kind: 'step',
          text: `${inHundred(sentBack(world, here.what.site, back))} back to ${back.to}${byText(back.by)}`,
        });
  const use = seen?.station(station)?.use,
    waiting = seen?.buffer(station)?.mean.mean ?? 0;
  if (use !== undefined)
    told.push({
      kind: 'use',
      share: use,
      text: `${Math.round(100 * use)} %`,
      more: waiting >= 0.05 && !isAgain ? waitText(waiting, seen?.waitMark) : undefined,
    });
  for (const [state, said] of isAgain ? [] : HELD) {
    const here = seen?.station(station),
      share = here === undefined ? 0 : shareIn(here.shares, state);
    if (share >= MUCH) told.push({ kind: 'step', text: `${said} ${Math.round(100 * share)} %` });
  }
  told.push(...supplies, ...bracketsTold(world, cell));
  return [...told, ...marksTold(world, cell)];
}

const waitText = (waiting: number, mark = ''): string =>
  `${waiting.toFixed(1)} ${waiting.toFixed(1) === '1.0' ? 'unit waits' : 'units wait'}${mark}`;

/** What keeps a unit in a place, told where it does so for much of its hours: rings may be full, use low. */
const HELD = [
    ['blocked', 'no room ahead'],
    ['short of crew', 'waits for people'],
    ['short of equipment', 'waits for equipment'],
  ] as const,
  MUCH = 0.25;

/** What begins or ends to stay with a unit, where no words stand in the bracket itself. */
const bracketsTold = ({ brackets, form }: World, cell: number): Told[] =>
  brackets
    .filter(({ side }) => form.columns > 0 || side >= 0)
    .flatMap(({ fromCell, toCell, words, name, back }): Told[] => {
      const end = `${name}${back === undefined ? '' : `, ${back}`}`;
      if (fromCell === cell && toCell === cell)
        return [{ kind: 'bracket', text: back === undefined ? words : `${words}, ${back}` }];
      return [
        ...(fromCell === cell ? [{ kind: 'bracket' as const, text: `from here ${words}` }] : []),
        ...(toCell === cell ? [{ kind: 'bracket' as const, text: `to here ${end}` }] : []),
      ];
    });

/** What is written at a lane. */
function laneTold(world: World, trip: Trip, cell: number): Told[] {
  const { scenario, seen } = world,
    lane = scenario.lanes[trip.lane],
    use = seen?.laneUse(trip.lane);
  if (lane === undefined) return [];
  const told: Told[] = [{ kind: 'name', text: trip.lane }];
  if (Object.keys(trip.when).length > 0) told.push({ kind: 'step', text: whenText(trip.when) });
  for (const each of laneTexts(lane, trip)) told.push({ kind: 'step', text: each });
  if (use !== undefined)
    told.push({ kind: 'use', share: use, text: `trucks ${Math.round(100 * use)} % busy` });
  return [...told, ...marksTold(world, cell)];
}

const sideTarget = ({ scenario }: World, name: string): string =>
  `stock up to ${scenario.feeders[name]?.target ?? 0}`;

/** Share sent back: as seen where a step sends back to one other only, else by arithmetic. */
export function sentBack({ route, seen }: World, site: string, { from, to, chance }: SentBack): number {
  const all = [route.main, ...route.sides].flatMap(({ backs }) => backs.filter((each) => each.from === from)),
    isOnly = all.every((each) => each.to === to);
  return (isOnly ? seen?.sentBack(site, from) : undefined) ?? chance;
}

export const sentBackText = (world: World, arc: SentBack & { readonly fromCell: number }): string => {
  const what = world.strip.cells[arc.fromCell]?.what;
  return inHundred(sentBack(world, what?.kind === 'stop' ? what.site : '', arc));
};

/** What stops the build here, and what a study marks. */
function marksTold(world: World, cell: number): Told[] {
  const { stops, idle = '', marks = [] } = world.seen ?? {};
  return [
    ...marks
      .filter(({ thing }) => isHere(world, thing, cell))
      .map(({ text }) => ({ kind: 'mark' as const, text })),
    ...(stops !== undefined && isHere(world, stops.thing, cell)
      ? [{ kind: 'stops' as const, text: idle === '' ? stops.text : `${stops.text}. ${idle}` }]
      : []),
  ];
}

/** Whether what is framed there last is a waiting space, not its places. */
export function isRoomAt(world: World, cell: number): boolean {
  const { stops, marks = [] } = world.seen ?? {},
    here = [...marks, ...(stops === undefined ? [] : [stops])].filter(({ thing }) =>
      isHere(world, thing, cell),
    );
  return here.at(-1)?.thing.kind === 'room';
}

/** The same as lines of text. */
export const marksAt = (world: World, cell: number): string[] =>
  marksTold(world, cell).map(({ text }) => text);

/** Whether a thing stands on the strip, or in the head of a plant on it. */
export const isOnMap = (world: World, thing: Thing): boolean =>
  thing.kind === 'crew' || thing.kind === 'equipment'
    ? world.strip.cells.some(({ side, what }) => side < 0 && what.kind === 'stop' && what.site === thing.site)
    : world.strip.cells.some((_, cell) => isHere(world, thing, cell));

function isHere({ strip, scenario, brackets }: World, thing: Thing, cell: number): boolean {
  const here = strip.cells[cell];
  if (here === undefined) return false;
  if (here.what.kind === 'trip')
    return ['lane', 'room'].includes(thing.kind) && here.what.lane === thing.name;
  const { station, steps, isAgain } = here.what;
  switch (thing.kind) {
    case 'station':
    case 'room':
      return station === thing.name && !isAgain;
    case 'step':
      return steps.some(({ step }) => step.name === thing.name);
    case 'feeder':
      return strip.sides[here.side]?.line.name === thing.name && strip.sides[here.side]?.cells[0] === cell;
    case 'carrier':
    case 'team':
      return brackets.some(
        ({ kind, name, fromCell }) => kind === thing.kind && name === thing.name && fromCell === cell,
      );
    case 'supply': {
      const first = strip.cells.findIndex(
        ({ what }) =>
          what.kind === 'stop' && what.steps.some(({ step }) => Object.hasOwn(step.parts, thing.name)),
      );
      return Object.hasOwn(scenario.supplies, thing.name) && first === cell;
    }
    default:
      return false;
  }
}
