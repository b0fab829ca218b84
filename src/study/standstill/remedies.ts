import type { Held } from '../../flow/gridlock/held.js';
import type { Standstill } from '../../flow/gridlock/stuck.js';
import { reliefsOf } from '../../scenario/reliefs/kinds.js';
import type { Relief } from '../../scenario/reliefs/relief.js';
import {
  ownStation,
  type Remedy,
  roomForRework,
  withoutInRework,
} from '../../scenario/reliefs/standstill.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { own } from '../../scenario/values/raw.js';

/** So many changes are tried. */
const MOST_TRIED = 6;

/**
 * What may end a standstill, as the ring suggests: more of what it lacks, or another way round. The first of
 * each thing, then the second of each, and so on.
 */
export function remediesFor(scenario: Scenario, { held }: Pick<Standstill, 'held'>): Remedy[] {
  const reliefs = reliefsOf(scenario),
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

/** Of one thing, the likeliest to help first. */
function remedies(scenario: Scenario, reliefs: readonly Relief[], { kind, name }: Held): Remedy[] {
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
        ...more(['person'], 'crew'),
        ...reliefs.filter(
          ({ kind: one, of }) =>
            one === 'team' && (of.kind === 'crew' ? of.name : own(scenario.teams, of.name)?.crew) === name,
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
