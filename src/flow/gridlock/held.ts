import type { Claimant } from '../claims/outside.js';
import type { Resource } from '../claims/resource.js';
import type { Buffer } from '../floor/buffer.js';
import { EMPTYING, UNLOADING, WAIT_DOCK } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import { UNLIMITED } from '../model/model.js';
import { CREW, STOCK, SUPPLY } from '../model/resources.js';
import type { Lane } from '../traffic/lane.js';
import type { Alive } from './alive.js';
import { standsAt, taskPlaces } from './floor.js';
import type { Held, HeldHow, Holder } from './holder.js';
import { mostFor } from './keepers.js';
import { type LackKind, lacksOf } from './lacks.js';
import { type Want, wantsOf } from './wants.js';
import { whereIs } from './whereabouts.js';

/** Who has what the members of a ring lack, one entry a thing, in the order in which it is first lacked. */
export function heldOf(alive: Alive, members: readonly Unit[]): Held[] {
  const all = new Map<string, Held>();
  for (const unit of members)
    for (const { kind, name } of lacksOf(alive, unit)) {
      const key = JSON.stringify([kind, name]),
        known = all.get(key),
        found = { kind, name, ...counts(alive, unit, kind, name) };
      all.set(key, known === undefined ? found : together(known, found));
    }
  return [...all.values()];
}

/** As several of the ring see it: the most that one wants, and whoever claims it ahead of one of them. */
function together(known: Held, { wanted, by }: Held): Held {
  const first = by.find(({ how }) => how === 'claims'),
    isNew = first !== undefined && known.by[0]?.how !== 'claims';
  return { ...known, wanted: Math.max(known.wanted, wanted), by: isNew ? [first, ...known.by] : known.by };
}

type Counts = Omit<Held, 'kind' | 'name'>;
const NOT_COUNTED: Counts = { all: null, wanted: 1, free: 0, coming: 0, onHand: null, site: '', by: [] };

function counts(alive: Alive, unit: Unit, kind: LackKind, name: string): Counts {
  switch (kind) {
    case 'room':
      return unit.step.lane === null ? spots(alive, unit.step.buffer) : inBank(alive, unit.step.buffer);
    case 'truck':
    case 'dock':
      return loads(alive, unit.truck?.lane ?? unit.step.lane!);
    case 'pulse': {
      const there = unit.place!.station.line!.stations.flatMap(({ places: [place] }) => place.unit ?? []);
      return {
        ...NOT_COUNTED,
        by: standing(
          alive,
          there.filter((other) => other !== unit),
        ),
      };
    }
    case 'own part': {
      const parts = alive.floor.ownParts(unit).flatMap((part) => part ?? []);
      return {
        ...NOT_COUNTED,
        by: parts
          .filter(({ step }) => step.route.name === name)
          .map((part) => holder(alive, part, 'made', 1)),
      };
    }
    default:
      return claimedBy(alive, unit, name);
  }
}

/** What a unit claims under a name: outside, or where it stands, at any of the steps side by side there. */
function claimedBy(alive: Alive, { place: stand, asks }: Unit, name: string): Counts {
  const at: readonly Claimant[] = asks !== null ? [asks] : stand === null ? [] : taskPlaces(stand);
  for (const place of at.filter((each) => alive.floor.claimsAt(each)))
    for (const want of wantsOf(place)) if (want.resource.name === name) return claimed(alive, place, want);
  return NOT_COUNTED;
}

function claimed(alive: Alive, place: Claimant, want: Want): Counts {
  const { resource, amount: wanted } = want,
    { kind, amount, free, feeder, supply } = resource,
    { resources: columns, siteNames } = alive.run.model,
    site = siteNames[columns.site[alive.run.shop.resources.indexOf(resource)]] ?? '',
    counted = { ...NOT_COUNTED, wanted, free, site },
    ahead = mostFor(alive, want) < wanted ? null : alive.shutBy(place, want),
    first = ahead === null ? [] : [holder(alive, standsAt(ahead), 'claims', 0)];
  switch (kind) {
    case STOCK: {
      const made = alive.floor.inMaking(feeder!).map((part) => holder(alive, part, 'made', 1));
      return { ...counted, by: [...first, ...made] };
    }
    case SUPPLY:
      return { ...counted, coming: supply!.onOrder, by: first };
    default: {
      const companions = alive.run.shop.companions.filter((each) => each.resource === resource);
      return {
        ...counted,
        all: amount,
        coming: companions.reduce((sum, each) => sum + each.coming, 0),
        onHand: kind === CREW ? resource.onHand : null,
        by: [
          ...first,
          ...companions.flatMap((companion) =>
            alive.floor.keepers
              .filter(({ companionBits }) => (companionBits & companion.bit) !== 0)
              .map((unit) => holder(alive, unit, 'stays', companion.amount)),
          ),
          ...atWork(alive, resource),
        ],
      };
    }
  }
}

/** Units on which people of a crew are at work for a step; those of teams only stay. */
const atWork = (alive: Alive, resource: Resource): Holder[] =>
  alive.run.shop.places
    .flatMap((place) => [place, ...place.sides])
    .filter(({ holdsCrew, unit }) => holdsCrew && unit !== null)
    .flatMap((place) =>
      place
        .unit!.step.asked.needs.filter((need) => need.resource === resource)
        .map(({ amount }) => holder(alive, standsAt(place), 'works', amount)),
    );

/** Who stands at a station and, where they are limited, in the spaces ahead of it. */
function spots(alive: Alive, buffer: Buffer): Counts {
  const { id, places } = buffer.station!,
    { stations } = alive.run.model,
    spaces = stations.buffer[id] + Math.max(0, stations.reworkBuffer[id]),
    isLimited = spaces < UNLIMITED,
    there = places.flatMap(({ unit }) => unit ?? []);
  return {
    ...NOT_COUNTED,
    all: isLimited ? stations.places[id] + spaces : null,
    by: standing(alive, isLimited ? [...there, ...inSpaces(alive, buffer)] : there),
  };
}

const inBank = (alive: Alive, bank: Buffer): Counts => ({
  ...NOT_COUNTED,
  all: alive.run.model.lanes.bank[bank.lane!.id],
  by: standing(alive, inSpaces(alive, bank)),
});

/** What is in the trucks of a lane that cannot come back empty. */
function loads(alive: Alive, { trucks }: Lane): Counts {
  const there = trucks.filter(({ phase }) => [WAIT_DOCK, UNLOADING, EMPTYING].includes(phase));
  return {
    ...NOT_COUNTED,
    all: trucks.length,
    by: standing(
      alive,
      there.flatMap((truck) => alive.floor.on(truck)),
    ),
  };
}

const inSpaces = (alive: Alive, buffer: Buffer): Unit[] =>
  alive.floor.units.filter((unit) => unit.step.buffer === buffer && buffer.holds(unit));

const standing = (alive: Alive, units: readonly Unit[]): Holder[] =>
  units.map((unit) => holder(alive, unit, 'stands', 1));

const holder = (alive: Alive, unit: Unit, how: HeldHow, amount: number): Holder => ({
  ...whereIs(unit),
  how,
  amount,
  lacks: alive.goes(unit) ? [] : lacksOf(alive, unit).map(({ kind, name }) => ({ kind, name })),
});
