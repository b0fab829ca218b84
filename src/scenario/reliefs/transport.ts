import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { placedStretches } from '../plant/stretches.js';
import type { Scenario } from '../types/scenario.js';
import { neighbours } from '../values/lists.js';
import { type Relief, withEntry, withEquipment } from './relief.js';
import type { Thing } from './thing.js';

/** A second departure is so long before an only one (behind it where that would be on the eve), minutes. */
const APART_MIN = 240;

/**
 * One truck more on each lane, one departure more where they go by a timetable, one more of each kind of
 * carrier and of equipment.
 */
export function moreTransport(scenario: Scenario): Relief[] {
  const lanes = Object.entries(scenario.lanes);
  return [
    ...lanes.map(
      ([lane, { from: start, to }]): Relief => ({
        kind: 'truck',
        text: `one truck more on ${lane}`,
        of: laneThing(lane, start, to),
        change: (from) => withEntry(from, 'lanes', lane, (its) => ({ ...its, trucks: its.trucks + 1 })),
      }),
    ),
    ...lanes.flatMap(([lane, { leaves, from: start, to }]): Relief[] => {
      const extra = leaves.kind === 'timetable' ? oneMore(leaves.atMin) : undefined;
      return extra === undefined
        ? []
        : [
            {
              kind: 'departure',
              text: `one departure more on ${lane} at ${clock(extra)}`,
              of: laneThing(lane, start, to),
              change: (from) =>
                withEntry(from, 'lanes', lane, (its) =>
                  its.leaves.kind !== 'timetable'
                    ? its
                    : {
                        ...its,
                        leaves: { ...its.leaves, atMin: [...its.leaves.atMin, extra].sort((a, b) => a - b) },
                      },
                ),
            },
          ];
    }),
    ...placedStretches(scenario, 'carriers', scenario.carriers).map(
      ({ name, steps: [first] }): Relief => ({
        kind: 'carrier',
        text: `one more of ${name}`,
        of: { kind: 'carrier', name, site: first?.where?.siteName ?? '' },
        change: (from) => withEntry(from, 'carriers', name, (its) => ({ ...its, count: its.count + 1 })),
      }),
    ),
    ...Object.entries(scenario.sites).flatMap(([site, { equipment }]) =>
      Object.keys(equipment ?? {}).map(
        (name): Relief => ({
          kind: 'equipment',
          text: `one ${name} more (${site})`,
          of: { kind: 'equipment', name, site },
          change: (from) => withEquipment(from, site, name, (its) => ({ ...its, count: its.count + 1 })),
        }),
      ),
    ),
  ];
}

const laneThing = (name: string, from: string, to: string): Thing => ({
  kind: 'lane',
  name,
  site: `${from} to ${to}`,
});

/** The middle of the widest gap between two departures of a day; undefined where there is none. */
function oneMore(atMin: readonly number[]): number | undefined {
  const times = [...new Set(atMin)].sort((a, b) => a - b),
    [only] = times;
  if (only === undefined) return undefined;
  if (times.length === 1) return only >= APART_MIN ? only - APART_MIN : only + APART_MIN;
  const gaps = neighbours(times)
    .map(([before, after]) => ({ width: after - before, middle: Math.floor((after + before) / 2) }))
    .filter(({ width }) => width >= 2);
  return gaps.sort((a, b) => b.width - a.width || a.middle - b.middle)[0]?.middle;
}

export const clock = (min: number): string =>
  [Math.floor((min % MINUTES_PER_DAY) / 60), min % 60].map((part) => String(part).padStart(2, '0')).join(':');
