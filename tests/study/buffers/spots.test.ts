import { describe, expect, it } from 'vitest';
import { UNLIMITED } from '../../../src/flow/model/model.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { checkGoal } from '../../../src/study/buffers/goal.js';
import { spotsOf, withLayout } from '../../../src/study/buffers/spots.js';

const read = (arrivals: string): Scenario =>
  readScenario(
    `
scenario: two plants
programme: { arrivals: ${arrivals}, length: 100 h }
sites:
  works: { stations: { booth: { buffer: 2 }, oven: { buffer: 1 }, bay: { buffer: unlimited }, axle bench: { buffer: 5 } } }
  plant: { stations: { line: {} } }
lanes:
  ferry: { from: works, to: plant, trucks: 1, capacity: 1, drive: 1 h, bank: 3, arrival bank: 1 }
  return road: { from: plant, to: works, trucks: 1, capacity: 1, drive: 1 h }
feeders: { axles: { stock: 1, route: [{ step: weld, at: axle bench, work: 1 h }] } }
route:
  - { step: prime, at: booth, work: 1 h }
  - { step: bake, at: oven, work: 1 h }
  - { step: look, at: bay, work: 1 h }
  - { lane: ferry }
  - { step: fit, at: line, work: 1 h, parts: { axles: 1 } }
  - { lane: return road }
  - { step: top coat, at: booth, work: 1 h }
`,
    'two.yaml',
    () => '',
  ).scenario!;
const drawn = read('{ exponential: { mean: 2 h } }');

describe('spots among which waiting places are shared out', () => {
  it('are the limited buffers and banks of the unit, once each: no unlimited one, no arrival bank where there is none, nothing of a feeder', () => {
    expect(spotsOf(drawn).map(({ name, present, least }) => [name, present, least])).toEqual([
      ['booth', 2, 0],
      ['oven', 1, 0],
      ['ferry: bank', 3, 1],
      ['ferry: arrival bank', 1, 0],
      ['line', 0, 0],
    ]);
  });

  it('have the banks of a lane by which units are only sent back', () => {
    const text = `
scenario: sent back
programme: { arrivals: 1 h, length: 100 h }
sites: { works: { stations: { booth: {} } }, plant: { stations: { line: { buffer: 1 } } } }
lanes:
  home: { from: plant, to: works, trucks: 1, capacity: 1, drive: 1 h, bank: 2 }
  out: { from: works, to: plant, trucks: 1, capacity: 1, drive: 1 h, bank: 3 }
route:
  - { step: paint, at: booth, work: 1 h }
  - { lane: out }
  - { step: test, at: line, work: 1 h, fails: { chance: 9 %, back to: paint } }
`;
    const { scenario } = readScenario(text, 'sent.yaml', () => '');
    expect(spotsOf(scenario!, ['line', 'home', 'out']).map(({ name }) => name)).toEqual([
      'out: bank',
      'out: arrival bank',
      'line',
      'home: bank',
      'home: arrival bank',
    ]);
  });

  it('leave out the buffer ahead of a saturated source, which without a limit would never be full, and refuse it by name', () => {
    expect(spotsOf(read('saturated')).map(({ name }) => name)).not.toContain('booth');
    expect(() => spotsOf(read('saturated'), ['booth'])).toThrow(
      'at: expected a spot that can be full, got "booth", where a unit is always ready to enter; name the others',
    );
  });

  it('are named by station, by lane for all its banks, or bank by bank, in the order of the route', () => {
    expect(spotsOf(drawn, ['line', 'ferry']).map(({ name }) => name)).toEqual([
      'ferry: bank',
      'ferry: arrival bank',
      'line',
    ]);
    expect(spotsOf(drawn, ['return road: arrival bank']).map(({ name, present }) => [name, present])).toEqual(
      [['return road: arrival bank', 0]],
    );
  });

  it.each([
    [['oevn'], 'at: expected a station or lane of the route, got "oevn"; there are "booth", "oven"'],
    [['axle bench'], 'at: expected a station or lane of the route, got "axle bench"'],
    [['bay'], 'at: expected a limited buffer or bank, got "bay", which is unlimited'],
    [['return road'], 'at: expected a limited buffer or bank, got "return road: bank", which is unlimited'],
  ])('are refused with what there is: %s', (named, error) => {
    expect(() => spotsOf(drawn, named)).toThrow(error);
  });

  it('are not arrival banks without a limit, which a layout without a limit makes of them', () => {
    const [bank] = spotsOf(drawn, ['ferry: arrival bank']),
      endless = withLayout(drawn, [bank], [UNLIMITED]);
    expect(endless.lanes['ferry'].arrivalBank).toBe('unlimited');
    expect(spotsOf(endless).map(({ name }) => name)).not.toContain('ferry: arrival bank');
    expect(() => spotsOf(endless, ['ferry'])).toThrow(
      'got "ferry: arrival bank", which is unlimited; give it a number in the scenario',
    );
    expect(withLayout(endless, [bank], [1])).toEqual(drawn);
  });

  it('change only their own places, in a copy; an arrival bank without a place is none', () => {
    const before = JSON.stringify(drawn),
      spots = spotsOf(drawn),
      changed = withLayout(drawn, spots, [0, 4, 1, 0, 2]);
    expect(changed.sites['works'].stations['booth'].buffer).toBe(0);
    expect(changed.sites['works'].stations['oven'].buffer).toBe(4);
    expect(changed.sites['works'].stations['bay'].buffer).toBeUndefined();
    expect(changed.lanes['ferry']).toMatchObject({ bank: 1, arrivalBank: undefined });
    expect(changed.lanes['return road']).toEqual(drawn.lanes['return road']);
    expect(JSON.stringify(drawn)).toBe(before);
    // On the days before a change is there as well.
    const { before: stages } = withLayout(
      { ...drawn, before: [{ until: '2030-01-01', scenario: drawn }] },
      spots,
      [0, 4, 1, 0, 2],
    );
    expect(stages).toEqual([{ until: '2030-01-01', scenario: changed }]);
    // The layout as it is gives the scenario as it is.
    expect(withLayout(drawn, spots, [2, 1, 3, 1, 0])).toEqual(drawn);
  });

  it('cannot be given fewer places than they need', () => {
    const spots = spotsOf(drawn).map((spot) => ({ ...spot, least: 1 }));
    expect(() => {
      checkGoal({ kind: 'budget', places: 4 }, spots);
    }).toThrow('budget: expected at least 5 places, without which the scenario cannot run, got 4');
    expect(() => {
      checkGoal({ kind: 'budget', places: 5 }, spots);
    }).not.toThrow();
  });
});
