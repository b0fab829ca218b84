import { calledThing } from '../../../study/constraint/sentence.js';
import { capital } from '../../../study/format.js';
import { INK, MUTED } from '../../style.js';
import { wrap } from '../../text.js';
import type { Group, Shape } from '../shapes.js';
import { text } from '../signs/frame.js';
import { isOnMap } from '../told.js';
import { hoursText, laneTexts, releaseText } from '../words.js';
import type { World } from '../world.js';
import { legend } from './legend.js';

/** Texts below one another, no wider than the drawing. */
function paragraph(
  world: World,
  words: readonly (readonly [string, number, '600' | 'normal', string])[],
  top: number,
): { shapes: Shape[]; height: number } {
  const { form } = world,
    shapes: Shape[] = [];
  let y = top;
  for (const [line, size, weight, colour] of words)
    for (const each of wrap(line, form.width - 2 * form.margin, size, weight)) {
      y += Math.round(1.32 * size);
      shapes.push(text(form.margin, y, each, { size, weight, colour }));
    }
  return { shapes, height: y - top + 6 };
}

/** Name of the scenario, what is released, what a run has shown. */
export function title(world: World, top: number): { group: Group; height: number } {
  const { scenario, seen, form } = world,
    { shapes, height } = paragraph(
      world,
      [
        [scenario.name, form.nameSize + 6, '600', INK],
        [releaseText(scenario.programme), form.smallSize + 1, 'normal', MUTED],
        ...(seen === undefined ? [] : ([[seen.head, form.smallSize + 1, '600', INK]] as const)),
        ...elsewhere(world).map((words) => [words, form.smallSize + 1, 'normal', INK] as const),
      ],
      top,
    );
  return { group: { kind: 'words', about: '', shapes }, height };
}

/** What a study marks of things that do not stand on the strip. */
const elsewhere = (world: World): string[] =>
  (world.seen?.marks ?? []).flatMap(({ thing, text: words }) =>
    isOnMap(world, thing) ? [] : [`${capital(calledThing(thing))}, not on the strip: ${words}`],
  );

/** What does not stand on a line. */
export function notes(world: World, top: number): { groups: Group[]; height: number } {
  const { route, form } = world,
    size = form.smallSize;
  const lines = [
    ...otherPlants(world),
    ...(route.idle.stations.length > 0
      ? [`On no route: ${route.idle.stations.map(({ name, site }) => `${name} (${site})`).join(', ')}`]
      : []),
    ...returnLines(world),
    ...(route.idle.lanes.length > 0 ? [`Lanes on no route: ${route.idle.lanes.join(', ')}`] : []),
    ...(route.idle.supplies.length > 0
      ? [`Supplies that no step takes: ${route.idle.supplies.join(', ')}`]
      : []),
  ];
  const { shapes, height } = paragraph(
    world,
    lines.map((line) => [line, size, 'normal', INK] as const),
    top,
  );
  return lines.length === 0
    ? { groups: [], height: 0 }
    : { groups: [{ kind: 'words', about: '', shapes }], height };
}

/** What the signs mean and of when the figures are, ahead of them. */
export function key(world: World, top: number): { group: Group; height: number } {
  const { seen, form } = world,
    signs = legend(world, top),
    source = paragraph(
      world,
      [
        [
          seen?.source ?? 'Shares that pass and are sent back are by arithmetic.',
          form.smallSize,
          'normal',
          MUTED,
        ],
      ],
      top + signs.height,
    );
  return {
    group: { kind: 'words', about: '', shapes: [...signs.shapes, ...source.shapes] },
    height: signs.height + source.height,
  };
}

/** Lanes that only units sent back go by: trucks, times and, after a run, use. */
function returnLines({ scenario, route, seen }: World): string[] {
  return route.returns.map((trip) => {
    const lane = scenario.lanes[trip.lane],
      use = seen?.laneUse(trip.lane);
    return [
      `Only for units sent back: ${trip.lane}`,
      ...(lane === undefined ? [] : laneTexts(lane, trip)),
      ...(use === undefined ? [] : [`trucks ${Math.round(100 * use)} % busy`]),
    ].join('; ');
  });
}

/** Plants that the unit's own way does not come to. */
function otherPlants({ scenario, route }: World): string[] {
  const onWay = new Set(route.main.entries.flatMap((each) => (each.kind === 'stop' ? [each.site] : [])));
  return Object.entries(scenario.sites).flatMap(([name, { zone, calendar, crews }]) =>
    onWay.has(name)
      ? []
      : [
          `${name} (${zone}; ${hoursText(scenario.calendars[calendar ?? ''])}): ` +
            (Object.entries(crews)
              .map(([crew, { headcount }]) => `${crew} ${headcount}`)
              .join(', ') || 'no crews'),
        ],
  );
}
