import { stationsOf } from '../lookup/placed.js';
import type { Station } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import { type Relief, type ReliefKind, withEntry } from './relief.js';

type Lot = NonNullable<Station['lot']>;

/**
 * One place more at each station; not in a pulse line, where a place is a part of the takt. A station with
 * lots works on one lot at a time, so a place brings something only as one more in the lot.
 */
export function morePlaces(scenario: Scenario): Relief[] {
  const pulsed = pulsedStations(scenario);
  return [...stationsOf(scenario)]
    .filter(([name]) => !pulsed.has(name))
    .map(
      ([
        name,
        {
          siteName,
          station: { lot },
        },
      ]) =>
        lot === undefined
          ? atStation('place', `one place more at ${name}`, siteName, name, (station) => ({
              ...station,
              places: station.places + 1,
            }))
          : atStation(
              'place',
              `one more in a lot at ${name} (${lot.most + 1} instead of ${lot.most})`,
              siteName,
              name,
              (station) => ({
                ...station,
                places: Math.max(station.places, lot.most + 1),
                lot: oneMoreIn(lot),
              }),
            ),
    );
}

/** A lot that has to be full still has to be. */
const oneMoreIn = (lot: Lot): Lot => ({
  ...lot,
  least: lot.least === lot.most ? lot.least + 1 : lot.least,
  most: lot.most + 1,
});

const pulsedStations = ({ pulseLines }: Scenario, from = 0): ReadonlySet<string> =>
  new Set(Object.values(pulseLines).flatMap(({ stations }) => stations.slice(from)));

/**
 * One space more in each buffer and rework buffer that is limited, and in each bank of a lane; not inside a
 * pulse line, which has room ahead of its first station only.
 */
export function moreSpaces(scenario: Scenario): Relief[] {
  const inside = pulsedStations(scenario, 1);
  const buffers = [...stationsOf(scenario)]
    .filter(([name]) => !inside.has(name))
    .flatMap(
      ([
        name,
        {
          siteName: site,
          station: { buffer, reworkBuffer },
        },
      ]): Relief[] => [
        ...(buffer === undefined
          ? []
          : [
              atStation('space', `one space more ahead of ${name}`, site, name, (station) => ({
                ...station,
                buffer: buffer + 1,
              })),
            ]),
        ...(typeof reworkBuffer === 'number'
          ? [
              {
                ...atStation(
                  'space',
                  `one space more for rework ahead of ${name}`,
                  site,
                  name,
                  (station) => ({
                    ...station,
                    reworkBuffer: reworkBuffer + 1,
                  }),
                ),
                which: 'rework',
              },
            ]
          : []),
      ],
    );
  const banks = Object.entries(scenario.lanes).flatMap(
    ([lane, { from, to, bank, arrivalBank }]): Relief[] => [
      ...(bank === undefined
        ? []
        : [inBank(`one space more ahead of lane ${lane}`, lane, from, { bank: bank + 1 })]),
      ...(typeof arrivalBank !== 'number'
        ? []
        : [
            {
              ...inBank(`one space more behind lane ${lane}`, lane, to, { arrivalBank: arrivalBank + 1 }),
              which: 'arrival bank',
            },
          ]),
    ],
  );
  return [...buffers, ...banks];
}

export function atStation(
  kind: ReliefKind,
  text: string,
  site: string,
  name: string,
  change: (station: Station) => Station,
): Relief {
  return {
    kind,
    text,
    of: { kind: kind === 'space' ? 'room' : 'station', name, site },
    change: (from) => withEntry(from, 'sites', site, (its) => withEntry(its, 'stations', name, change)),
  };
}

const inBank = (
  text: string,
  lane: string,
  site: string,
  spaces: { readonly bank: number } | { readonly arrivalBank: number },
): Relief => ({
  kind: 'space',
  text,
  of: { kind: 'room', name: lane, site },
  change: (from) => withEntry(from, 'lanes', lane, (its) => ({ ...its, ...spaces })),
});
