import type { Held } from '../../flow/gridlock/holder.js';
import type { Standstill } from '../../flow/gridlock/stuck.js';
import type { Model } from '../../flow/model/model.js';
import { reliefsOf } from '../../scenario/reliefs/kinds.js';
import type { Relief } from '../../scenario/reliefs/relief.js';
import {
  ownStation,
  type Remedy,
  roomForRework,
  withoutInRework,
} from '../../scenario/reliefs/standstill.js';
import { keyOfThing } from '../../scenario/reliefs/thing.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { own } from '../../scenario/values/raw.js';
import { exact } from '../format.js';
import type { Circle } from './circles.js';

/** So many changes are tried. */
const MOST_TRIED = 6;

/**
 * What may end a standstill, as the ring suggests: more of what it lacks, or another way round. The first of
 * each thing, then the second of each, and so on.
 * @param times how often one more of a thing is added
 */
export function remediesFor(scenario: Scenario, { held }: Pick<Standstill, 'held'>, times = 1): Remedy[] {
  const reliefs = reliefsOf(scenario).map((relief) => ({ ...relief, ...timesOver(relief, times) })),
    each = held.map((lack) => remedies(scenario, reliefs, lack)),
    rounds = Math.max(0, ...each.map(({ length }) => length)),
    all = new Map<string, Remedy>();
  for (let round = 0; round < rounds; round++)
    for (const list of each) {
      const remedy = list.at(round);
      if (remedy !== undefined && !all.has(remedy.text)) all.set(remedy.text, remedy);
    }
  return [...all.values()].slice(0, MOST_TRIED);
}

/** One more, and then one more of the scenario that has it; the text says so. */
function timesOver({ kind, of, which, text, change }: Relief, times: number): Remedy {
  if (times === 1) return { text, change };
  const again = (from: Scenario): Scenario =>
    reliefsOf(from)
      .find((each) => each.kind === kind && keyOfThing(each.of) === keyOfThing(of) && each.which === which)
      ?.change(from) ?? from;
  return {
    text: `${exact(times)} times ${text.replace(/ \(\d+ instead of \d+\)$/, '')}`,
    change: (from) =>
      Array.from({ length: times - 1 }).reduce<Scenario>((changed) => again(changed), change(from)),
  };
}

/** Of one thing, the likeliest to help first. */
function remedies(scenario: Scenario, reliefs: readonly Relief[], { kind, name, site }: Held): Remedy[] {
  const more = (kinds: readonly Relief['kind'][], of: Relief['of']['kind'], which?: string): Relief[] =>
    kinds.flatMap((one) =>
      reliefs.filter(
        (each) =>
          each.kind === one &&
          each.of.kind === of &&
          each.of.name === name &&
          (which === undefined || each.which === which),
      ),
    );
  switch (kind) {
    case 'room':
    case 'truck':
    case 'dock':
    case 'pulse':
      return [
        ...roomForRework(scenario, name),
        ...more(['space'], 'room', 'rework'),
        ...ownStation(scenario, name),
        ...more(['truck'], 'lane'),
        ...more(['space'], 'room').filter(({ which }) => which !== 'rework'),
        ...more(['place'], 'station'),
      ];
    case 'carrier':
      return [...more(['carrier'], 'carrier'), ...withoutInRework(scenario, name)];
    case 'crew':
      return [
        ...reliefs.filter(
          ({ kind: one, of }) =>
            (one === 'person' || one === 'team') &&
            of.site === site &&
            (of.kind === 'crew' ? of.name : own(scenario.teams, of.name)?.crew) === name,
        ),
        ...Object.entries(scenario.teams).flatMap(([team, { crew }]) =>
          crew === name ? withoutInRework(scenario, team) : [],
        ),
      ];
    case 'parts':
      return more(['target stock'], 'feeder');
    case 'supply':
      return more(['delivery', 'stock', 'lot'], 'supply');
    default:
      return [];
  }
}

/** What lets those wait outside who wait in their places for parts; '' where that is done. */
export function waitElsewhere({ steps, routes }: Model, circle: Circle): string {
  const step = circle.find(({ why }) => why === 'parts')?.step ?? -1,
    route = steps.route[step];
  if (step < 0) return '';
  if (route > 0) return routes.fullKit[route] === 1 ? '' : `a full kit for ${routes.names[route]}, or `;
  return steps.asksAhead[step] === 1
    ? ''
    : `${steps.names[step]} that waits for its parts in the buffer, or `;
}
