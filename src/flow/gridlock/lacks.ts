import { isToBegin } from '../claims/claims.js';
import type { Claimant } from '../claims/outside.js';
import type { Buffer } from '../floor/buffer.js';
import type { Place } from '../floor/place.js';
import { EMPTYING } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import { CREW, STOCK, SUPPLY } from '../model/resources.js';
import type { PulseLine } from '../traffic/pulse-lines.js';
import type { Alive } from './alive.js';
import { standsAt, taskPlaces } from './floor.js';
import { keepersOf, mostFor } from './keepers.js';
import type { Want } from './wants.js';

/**
 * `room` at a station or lane; `truck` of a lane, or a `dock` for its truck; `pulse` of a line, held up; `own
 * part` of the unit; `parts` of a feeder for stock; `supply` of which no more will come; `carrier`; `crew`;
 * `lot`: more units.
 */
export type LackKind =
  | 'room'
  | 'truck'
  | 'dock'
  | 'pulse'
  | 'own part'
  | 'parts'
  | 'supply'
  | 'carrier'
  | 'crew'
  | 'lot';

/** What a unit that can never go on waits for, and who of those like it has that. */
export interface Lacked {
  readonly kind: LackKind;
  /** Name of the station, lane, pulse line, feeder, supply, carrier or crew. */
  readonly name: string;
  readonly holders: readonly Unit[];
}

/** Everything that keeps it where it is for ever. */
export function lacksOf(alive: Alive, unit: Unit): Lacked[] {
  const { place, truck, step } = unit;
  if (place !== null) {
    if (place.isDone && place.station.line !== null) return inLine(alive, place, place.station.line);
    if (place.isDone) return ahead(alive, unit);
    if (place.station.lotMost > 0 && place.station.lotOpen)
      return [{ kind: 'lot', name: place.station.name, holders: [] }];
    return taskPlaces(place)
      .filter((at) => !alive.goesAt(at))
      .flatMap((at) => claimed(alive, at));
  }
  if (truck !== null && truck.phase !== EMPTYING) return [room(alive, truck.lane.bank, 'dock')];
  if (unit.asks !== null) return ahead(alive, unit);
  return [room(alive, step.buffer, step.lane !== null && step.buffer.holds(unit) ? 'truck' : 'room')];
}

/** What a unit lacks at its next station: what it asks for outside, if that never comes, else room. */
function ahead(alive: Alive, { asks, step }: Unit): Lacked[] {
  const lacks = asks === null ? [] : claimed(alive, asks);
  return lacks.length > 0 ? lacks : [room(alive, step.buffer)];
}

/** @param kind what of a lane is wanted, if it is one: those in its trucks have it all */
function room(alive: Alive, buffer: Buffer, kind: LackKind = 'room'): Lacked {
  return { kind, name: (buffer.lane ?? buffer.station!).name, holders: blockers(alive, buffer) };
}

/** Those who would have to go on before a place or a space comes free there. */
function blockers(alive: Alive, { lane, station }: Buffer): Unit[] {
  if (lane !== null)
    return lane.trucks
      .filter(({ phase }) => phase === EMPTYING)
      .flatMap((truck) => alive.floor.on(truck).filter((unit) => !alive.goes(unit)));
  if (station!.line !== null) return inTheWay(alive, station!.line);
  return station!.places.filter((place) => !alive.goesAt(place)).flatMap(({ unit }) => unit ?? []);
}

/** Those for whom the line waits: whoever is not done, and the last one where it has no room. */
function inTheWay(alive: Alive, line: PulseLine): Unit[] {
  return line.stations.flatMap(({ places: [place] }) => {
    const waitedFor = place.isDone
      ? place.station === line.last && !alive.mayLeave(line)
      : !alive.goesAt(place);
    return waitedFor ? (place.unit ?? []) : [];
  });
}

function inLine(alive: Alive, place: Place, line: PulseLine): Lacked[] {
  const others = inTheWay(alive, line).filter((unit) => unit !== place.unit),
    lacks: Lacked[] = others.length > 0 ? [{ kind: 'pulse', name: line.name, holders: others }] : [];
  return place.station === line.last && !alive.mayLeave(line)
    ? [...lacks, room(alive, line.leaving!.buffer)]
    : lacks;
}

/** What the claim at a place will never get. */
function claimed(alive: Alive, place: Claimant): Lacked[] {
  const { floor } = alive;
  const own: Lacked[] = !isToBegin(place.phase)
    ? []
    : floor
        .ownParts(place.unit!)
        .flatMap((part) =>
          part === null || alive.goes(part)
            ? []
            : [{ kind: 'own part' as const, name: part.step.route.name, holders: [part] }],
        );
  return [...own, ...alive.unmet(place).map((want) => neverThere(alive, place, want))];
}

/** Who has what is wanted or, where there would be enough, the claim ahead that keeps it from others. */
function neverThere(alive: Alive, place: Claimant, want: Want): Lacked {
  const { resource, amount } = want,
    { kind, name, feeder } = resource,
    ahead = mostFor(alive, want) < amount ? null : alive.shutBy(place, want);
  const holders = (keepers: () => Unit[]): Unit[] => (ahead === null ? keepers() : [standsAt(ahead)]);
  switch (kind) {
    case STOCK:
      return {
        kind: 'parts',
        name,
        holders: holders(() => alive.floor.inMaking(feeder!).filter((part) => !alive.goes(part))),
      };
    case SUPPLY:
      return { kind: 'supply', name, holders: holders(() => []) };
    default:
      return {
        kind: kind === CREW ? 'crew' : 'carrier',
        name,
        holders: holders(() => Array.from(keepersOf(alive, want), ({ unit }) => unit)),
      };
  }
}
