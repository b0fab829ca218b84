import { describe, expect, it } from 'vitest';
import { type Changed, shop } from '../../study/validate/shop.js';
import { scenarioBuilt } from '../built.js';
import { falseAlarms, named, SLOW } from './logs.js';

const scenario = scenarioBuilt(shop({}));

/** Truth is known: the logs are made by the same line, changed in one input or in none. */
describe('20 logs of 200 units', () => {
  it('raise a false alarm in no more than 2, if the line is as the model says', {
    timeout: SLOW,
  }, async () => {
    expect(await falseAlarms(scenario)).toBeLessThanOrEqual(2);
  });

  it.each<[string, Changed, RegExp]>([
    ['a step 15 % slower', { weld: '172.5 min' }, /^working minutes of weld: .* longer$/],
    ['a blind inspection', { found: '1 %' }, /^dirt found, of those .* at inspect: /],
    ['a crew that is one smaller', { fitters: 4 }, /^people of fitters: never more than 4 /],
  ])('name %s first in at least 18', { timeout: SLOW }, async (_, changed, wanted) => {
    expect(await named(scenario, scenarioBuilt(shop(changed)), wanted)).toBeGreaterThanOrEqual(18);
  });
});
