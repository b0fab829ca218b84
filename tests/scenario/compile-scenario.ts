import type { Distribution } from '../../src/random/distribution.js';
import type { CalendarSpec } from '../../src/scenario/types/calendars.js';
import type { Lane, Site, Station } from '../../src/scenario/types/plant.js';
import type { Programme } from '../../src/scenario/types/programme.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import type { Chance, Feeder, Find, RouteEntry, StationStep } from '../../src/scenario/types/steps.js';

/**
 * Scenarios by hand, with the reader's defaults, for tests of what comes after the reader. All data is
 * invented.
 */
export const minutes = (value: number): Distribution => ({ kind: 'constant', value });
export const chance = (usual: number, byOption: Chance['byOption'] = []): Chance => ({ usual, byOption });

export const dayShift: CalendarSpec = {
  hours: [{ startMin: 6 * 60, endMin: 14 * 60 + 30 }],
  breaks: [{ startMin: 12 * 60, endMin: 12 * 60 + 30 }],
  on: [1, 2, 3, 4, 5],
  holidays: [],
  shutdowns: [],
  overtime: [],
};

export function station(more: Partial<Station> = {}): Station {
  return {
    places: 1,
    buffer: 0,
    reworkBuffer: undefined,
    unattended: false,
    calendar: undefined,
    changeover: undefined,
    lot: undefined,
    failures: [],
    people: undefined,
    ...more,
  };
}

export function step(name: string, at: string, more: Partial<StationStep> = {}): StationStep {
  return {
    kind: 'step',
    name,
    at,
    when: {},
    crew: {},
    work: undefined,
    passes: undefined,
    process: undefined,
    attendedEnd: false,
    oneShift: false,
    workFactor: {},
    learning: undefined,
    rework: 'both',
    sample: undefined,
    parts: {},
    waitForParts: undefined,
    takesOff: [],
    creates: {},
    finds: {},
    fails: undefined,
    hold: undefined,
    comparesWith: undefined,
    sideBySide: undefined,
    ...more,
  };
}

export function site(stations: Record<string, Station>, more: Partial<Site> = {}): Site {
  return { zone: 'Europe/Oslo', calendar: undefined, crews: {}, stations, ...more };
}

export function lane(from: string, to: string, more: Partial<Lane> = {}): Lane {
  return {
    from,
    to,
    trucks: 1,
    capacity: 1,
    load: minutes(0),
    drive: minutes(0),
    unload: minutes(0),
    return: minutes(0),
    leaves: { kind: 'full' },
    hours: undefined,
    bank: undefined,
    arrivalBank: undefined,
    docks: { from: undefined, to: undefined },
    ...more,
  };
}

export function feeder(route: RouteEntry[], more: Partial<Feeder> = {}): Feeder {
  return { kind: 'stock', target: 1, atStart: 0, fullKit: undefined, route, ...more };
}

export const back = (
  p: number,
  to: string,
  more: { limit?: number; atLimit?: 'pass' | 'scrap' } = {},
): Find => ({
  chance: chance(p),
  then: { kind: 'back', to, limit: 5, atLimit: 'pass', by: undefined, ...more },
});
export const repair = (p: number, work: Distribution): Find => ({
  chance: chance(p),
  then: { kind: 'repair', work },
});
export const carry = (p: number, work: Distribution): Find => ({
  chance: chance(p),
  then: { kind: 'carry', work },
});
export const scrap = (p: number): Find => ({ chance: chance(p), then: { kind: 'scrap' } });

export function programme(more: Partial<Programme> = {}): Programme {
  return {
    start: '2027-03-01',
    zone: 'Europe/Oslo',
    options: {},
    release: { kind: 'rate', phases: [{ from: '2027-03-01', perDay: 2 }] },
    quantity: 10,
    until: undefined,
    lengthMin: undefined,
    warmUpMin: 0,
    orders: { list: [], dueAfterMin: undefined, replaceScrapped: false },
    ...more,
  };
}

export function scenario(parts: Partial<Scenario> & Pick<Scenario, 'sites' | 'route'>): Scenario {
  return {
    name: 'invented',
    note: undefined,
    programme: programme(),
    calendars: {},
    feeders: {},
    supplies: {},
    lanes: {},
    carriers: {},
    teams: {},
    defects: {},
    costs: undefined,
    outages: [],
    pulseLines: {},
    assumptions: [],
    levers: [],
    ...parts,
  };
}
