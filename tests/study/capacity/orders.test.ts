import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import type { Programme } from '../../../src/scenario/types/programme.js';

import { capacity } from '../../../src/study/capacity/capacity.js';
import {
  chance,
  dayShift,
  minutes,
  programme,
  scenario,
  scrap,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

const order = (options: Record<string, string>): Programme['orders']['list'][number] => ({
  build: undefined,
  release: undefined,
  due: undefined,
  options,
  at: undefined,
  written: { path: [] },
});
function minutesAtBooth(
  quantity: number,
  list: Programme['orders']['list'],
  more: Partial<Programme['orders']> = {},
  p = 0,
): number {
  const from = scenario({
    calendars: { days: dayShift },
    sites: { yard: site({ booth: station() }, { calendar: 'days' }) },
    route: [
      step('coat', 'booth', {
        work: minutes(60),
        workFactor: { colour: { red: 2 }, size: { large: 3 } },
        fails: { ...scrap(p), chance: chance(p) },
      }),
    ],
    programme: programme({
      quantity,
      options: { colour: { red: 0.5, white: 0.5 }, size: { small: 0.5, large: 0.5 } },
      orders: { list, dueAfterMin: undefined, replaceScrapped: false, ...more },
    }),
  });
  return capacity(compile(from), from).rows.find(({ name }) => name === 'booth')!.minutesPerUnit;
}

describe('capacity of a programme with orders', () => {
  it('reckons with the options that they give, combined as they are, and with the shares of those drawn', () => {
    // Drawn: 60 * 1.5 * 2 = 180. Red and large: 360; white and small: 60; red, size drawn: 120 * 2 = 240.
    expect(minutesAtBooth(4, [])).toBeCloseTo(180, 10);
    expect(
      minutesAtBooth(2, [order({ colour: 'red', size: 'large' }), order({ colour: 'white', size: 'small' })]),
    ).toBeCloseTo((360 + 60) / 2, 10);
    expect(
      minutesAtBooth(4, [order({ colour: 'red', size: 'large' }), order({ colour: 'red' })]),
    ).toBeCloseTo((360 + 240 + 2 * 180) / 4, 10);
  });

  it('begins 1 / yield units for each order where scrapped ones are replaced', () => {
    expect(minutesAtBooth(4, [], {}, 0.2)).toBeCloseTo(180, 10);
    expect(minutesAtBooth(4, [], { replaceScrapped: true }, 0.2)).toBeCloseTo(180 / 0.8, 10);
  });
});
