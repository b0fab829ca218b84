import type { Thing } from '../../../scenario/reliefs/thing.js';
import { INK, MUTED } from '../../style.js';
import { wrap } from '../../text.js';
import type { Shape } from '../shapes.js';
import { text } from '../signs/frame.js';
import { BAR, BAR_GAP, FRAME, frameOf, useBar } from '../signs/labels.js';
import { hoursText } from '../words.js';
import type { World } from '../world.js';

export interface Head {
  readonly shapes: readonly Shape[];
  readonly height: number;
}

const COLUMN_GAP = 22;

/** Name, zone and shifts of a plant, and its crews and equipment as a table, from a corner on. */
export function plantHead(
  world: World,
  site: string,
  isAgain: boolean,
  x: number,
  top: number,
  width: number,
): Head {
  const { scenario, form, seen } = world,
    plant = scenario.sites[site],
    shapes: Shape[] = [];
  let y = top;
  const lines = (words: string, size: number, weight: 'normal' | '600', colour: string): void => {
    for (const line of wrap(words, width, size, weight).slice(0, 4)) {
      y += Math.round(1.25 * size);
      shapes.push(text(x, y, line, { size, weight, colour }));
    }
  };
  const framed = (kind: 'stops' | 'mark', words: string): void => {
    const { smallSize: size } = form,
      weight = kind === 'stops' ? '600' : 'normal',
      pitch = Math.round(1.25 * size),
      broken = wrap(words, width - 2 * FRAME, size, weight);
    shapes.push(frameOf(kind, x, y + 2, width, broken.length * pitch + 2 * FRAME));
    broken.forEach((line, i) => {
      shapes.push(text(x + FRAME, y + FRAME + (i + 1) * pitch, line, { size, weight }));
    });
    y += broken.length * pitch + 2 * FRAME + 6;
  };
  lines(isAgain ? `${site} (again)` : site, form.nameSize + 3, '600', INK);
  if (plant === undefined || isAgain) return { shapes, height: y - top + 6 };
  lines(
    `${plant.zone}; ${plant.calendar === undefined ? '' : `${plant.calendar}: `}` +
      hoursText(scenario.calendars[plant.calendar ?? '']),
    form.smallSize,
    'normal',
    MUTED,
  );
  const others = new Set(
    [
      ...Object.values(plant.crews),
      ...Object.values(plant.equipment ?? {}),
      ...Object.values(plant.stations),
    ].flatMap(({ calendar }) => (calendar === undefined || calendar === plant.calendar ? [] : [calendar])),
  );
  for (const each of others)
    lines(`${each}: ${hoursText(scenario.calendars[each])}`, form.smallSize, 'normal', MUTED);
  y += 5;
  const row = (kind: Thing['kind'], name: string, count: string, calendar: string | undefined) => ({
      words:
        `${name} ${count}` + (calendar === undefined || calendar === plant.calendar ? '' : `, ${calendar}`),
      use: kind === 'crew' ? seen?.crewUse(site, name) : seen?.equipmentUse(site, name),
      isStopped:
        seen?.stops !== undefined &&
        isOfPlant(seen.stops.thing, site) &&
        seen.stops.thing.kind === kind &&
        seen.stops.thing.name === name,
    }),
    rows = [
      ...Object.entries(plant.crews).map(([name, { headcount, shifts, calendar }]) =>
        row('crew', name, shifts?.headcounts?.join(' + ') ?? String(headcount), calendar),
      ),
      ...Object.entries(plant.equipment ?? {}).map(([name, { count, calendar }]) =>
        row('equipment', name, String(count), calendar),
      ),
    ],
    size = form.smallSize,
    height = Math.round(1.3 * size),
    useWidth = seen === undefined ? 0 : BAR + BAR_GAP + 34,
    longest = Math.max(0, ...rows.map(({ words }) => text(0, 0, words, { size, weight: '600' }).width)),
    count = Math.max(1, Math.floor((width + COLUMN_GAP) / (longest + useWidth + COLUMN_GAP + 6))),
    column = (width + COLUMN_GAP) / count,
    room = column - useWidth - COLUMN_GAP,
    ends = Array.from({ length: count }, () => y);
  rows.forEach(({ words, use, isStopped }, i) => {
    // Row by row, each under what stands above it in its column.
    const at = i % count,
      left = x + at * column,
      weight = isStopped ? '600' : 'normal',
      start = ends[at] ?? y;
    wrap(words, room, size, weight)
      .slice(0, 3)
      .forEach((line, k) => {
        shapes.push(text(left, start + (k + 1) * height, line, { size, weight }));
        ends[at] = start + (k + 1) * height + 2;
      });
    if (use === undefined) return;
    const base = start + height;
    shapes.push(
      ...useBar(left + room + 6, base - 6, use),
      text(left + room + 6 + BAR + BAR_GAP, base, `${Math.round(100 * use)} %`, { size, colour: MUTED }),
    );
  });
  y = Math.max(...ends) + 2;
  const { stops, marks = [] } = seen ?? {};
  for (const { thing, text: words } of marks) if (isOfPlant(thing, site)) framed('mark', words);
  if (stops !== undefined && isOfPlant(stops.thing, site)) framed('stops', stops.text);
  return { shapes, height: y - top + 8 };
}

/** What is told at the head of a plant. */
const isOfPlant = ({ kind, site }: Thing, plant: string): boolean =>
  (kind === 'crew' || kind === 'equipment') && site === plant;
