import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { changedThings } from '../../../src/study/route/changed.js';
import { lane, minutes, programme, scenario, site, station, step } from '../../scenario/compile-scenario.js';

const crew = (headcount: number) => ({ headcount, calendar: undefined }),
  hall = site({ a: station({ buffer: 4 }), b: station() }, { crews: { fitters: crew(3) } });
const base = scenario({
  sites: {
    hall,
    yard: site({ gate: station() }),
  },
  lanes: { road: lane('hall', 'yard') },
  route: [step('cut', 'a', { work: minutes(5) }), step('weld', 'b', { work: minutes(5) })],
});
const withHall = (change: Partial<typeof hall>): Scenario => ({
  ...base,
  sites: { ...base.sites, hall: { ...hall, ...change } },
});

describe('what differs between two scenarios', () => {
  it('is nothing between a scenario and itself, or where only its name or basis differ', () => {
    expect(changedThings(base, structuredClone(base))).toEqual({ things: [], isMore: false });
    expect(changedThings(base, { ...base, name: 'other', note: 'x', assumptions: [] })).toEqual({
      things: [],
      isMore: false,
    });
  });

  it('is a station, its room where only spaces differ, and a crew', () => {
    const thing = (kind: string, name: string) => ({ kind, name, site: 'hall' });
    expect(
      changedThings(base, withHall({ stations: { a: station({ buffer: 4, places: 2 }), b: station() } })),
    ).toEqual({ things: [thing('station', 'a')], isMore: false });
    expect(changedThings(base, withHall({ stations: { a: station({ buffer: 9 }), b: station() } }))).toEqual({
      things: [thing('room', 'a')],
      isMore: false,
    });
    expect(changedThings(base, withHall({ crews: { fitters: crew(4) } }))).toEqual({
      things: [thing('crew', 'fitters')],
      isMore: false,
    });
  });

  it('is a step whose work differs, and a lane', () => {
    const route = [step('cut', 'a', { work: minutes(5) }), step('weld', 'b', { work: minutes(4) })],
      lanes = { road: lane('hall', 'yard', { trucks: 7 }) };
    expect(changedThings(base, { ...base, route, lanes })).toEqual({
      things: [
        { kind: 'lane', name: 'road', site: '' },
        { kind: 'step', name: 'weld', site: 'hall' },
      ],
      isMore: false,
    });
  });

  it('is more than can be pointed at where steps come, go or change their order, or the programme differs', () => {
    for (const other of [
      { ...base, route: base.route.slice(1) },
      { ...base, route: base.route.toReversed() },
      { ...base, programme: programme({ quantity: 11 }) },
      withHall({ stations: { ...hall.stations, c: station() } }),
    ])
      expect(changedThings(base, other)).toEqual({ things: [], isMore: true });
  });
});
