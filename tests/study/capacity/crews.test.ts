import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { readScenario } from '../../../src/scenario/read.js';
import { type CapacityRow, type CapacityTable, capacity } from '../../../src/study/capacity/capacity.js';
import { modelOf } from '../../flow/run-yaml.js';

/** Capacity of crews by hand: two shifts of 8 h, five days, 13 whole weeks or more without a holiday. */
function table(crews: string, more = '', each = 1): CapacityTable {
  const yaml = shop(crews, more, each);
  return capacity(modelOf(yaml), readScenario(yaml, 'capacity.yaml', () => '').scenario!);
}
function shop(crews: string, more: string, each: number): string {
  return `
scenario: capacity of crews
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 100 }
calendars: { two: { hours: ["06:00-14:00", "14:00-22:00"]${more} } }
sites: { hall: { calendar: two, crews: { ${crews} }, stations: { floor: { places: 9 } } } }
route: [{ step: fit, at: floor, crew: { fitters: ${each} }, work: ${10 / each} h }]
`;
}
const fitters = ({ rows }: CapacityTable): CapacityRow => rows.find(({ name }) => name === 'fitters')!;

describe('capacity of a crew', () => {
  it('is the sum over its shifts of people times minutes: (6 + 3) x 480 min a day for 600 person-minutes a unit', () => {
    expect(fitters(table('fitters: { headcount: [6, 3] }'))).toMatchObject({
      availableMinutesPerDay: 9 * 480,
      minutesPerUnit: 600,
    });
    expect(fitters(table('fitters: { headcount: [6, 3] }')).capacityPerDay).toBeCloseTo(7.2, 10);
    expect(fitters(table('fitters: 6')).availableMinutesPerDay).toBe(12 * 480);
  });

  it('leaves out whom nobody can ask for: of 6 and 3 people for pairs 6 and 2', () => {
    const pairs = fitters(table('fitters: { headcount: [6, 3] }', '', 2));
    expect(pairs).toMatchObject({ availableMinutesPerDay: 8 * 480, minutesPerUnit: 600 });
  });

  it('of five people for threes is what the engine ships when more is asked', () => {
    const crowded = shop('fitters: 5', '', 3).replace('rate: { per day: 2 }', 'rate: { per day: 40 }'),
      { shippedAt } = simulate(prepare(modelOf(crowded)), '1', 1),
      days = shippedAt.reduce((last, at) => Math.max(last, at), 0) / 1440;
    // 200 min each, one after the other, in 16 h of five days a week.
    const { capacityPerDay } = fitters(table('fitters: 5', '', 3));
    expect(capacityPerDay).toBeCloseTo((16 * 60) / 200, 10);
    expect(Math.ceil((days / 7) * 5)).toBe(Math.ceil(100 / capacityPerDay!));
  });

  it('is less by those who are missing', () => {
    expect(
      fitters(table('fitters: { headcount: [6, 3], absence: 10 % }')).availableMinutesPerDay,
    ).toBeCloseTo(0.9 * 9 * 480, 8);
  });

  it('leaves overtime out and says so, and takes shutdowns off the working days', () => {
    const overtime =
      ', overtime: [{ on: Sat, hours: ["06:00-12:00"] }, { hours: ["22:00-23:00"], when: { units behind: 2, lead time: 5 days } }]';
    for (const crews of ['fitters: { headcount: [6, 3] }', 'fitters: 6']) {
      expect(fitters(table(crews, overtime)).availableMinutesPerDay).toBeCloseTo(
        fitters(table(crews)).availableMinutesPerDay,
        8,
      );
      expect(table(crews, overtime).note).toBe('overtime is left out: it comes on top');
      expect(table(crews).note).toBeNull();
    }
    const shut = table(
      'fitters: { headcount: [6, 3] }',
      ', shutdowns: [{ from: 2027-03-08, to: 2027-03-12 }]',
    );
    expect(fitters(shut).availableMinutesPerDay).toBeCloseTo(9 * 480, 8);
  });
});
