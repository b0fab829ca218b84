import { describe, expect, it } from 'vitest';
import { reachTable } from '../../../src/report/terminal/reach.js';
import { CHEAPER_OPEN, HOLDS, NO_PRICES, NOT_REACHED, OF_EVERY_OUTCOME, SAMPLE } from '../samples/reach.js';

describe('the terminal of reach', () => {
  it('has the steps, what they bring, the most for each sum, and how it was searched', () => {
    const text = reachTable(SAMPLE, 120);
    expect(text).toMatch(
      /^1 {2}“second colour booth” +420,000 +420,000 {2}2027-03-16 +15,525 {2}2028-04-12/m,
    );
    expect(text).toMatch(
      /^3 {2}3\.918 \(3\.908 to 3\.926\) {2}0\.051 \(0\.043 to 0\.060\) +the calendar "days", at 4\.4 a day$/m,
    );
    expect(text).toMatch(
      /^ +465,000 {2}3\.918 \(3\.908 to 3\.926\) {2}“second colour booth”, .* \(the answer\)$/m,
    );
    expect(text).toContain('every cheaper set falls short');
    expect(text).toMatch(/^with these changes at 4\.4 a day:$/m);
  });

  it('says of a step without a sure gain that none was seen, and of a cheaper set that it is open', () => {
    expect(reachTable(NOT_REACHED, 120)).toMatch(/^2 .* 0\.00\d? \(-0\.008 to 0\.016\), no gain seen/m);
    expect(reachTable(CHEAPER_OPEN, 120)).not.toMatch(/every cheaper set falls/i);
  });

  it('has no column of money where nothing has a price, and none of a step where it holds as it is', () => {
    expect(reachTable(NO_PRICES, 120)).not.toMatch(/so far|a unit costs|EUR/);
    expect(reachTable(HOLDS, 120)).not.toMatch(/^1 {2}/m);
  });

  it.each(Object.entries(OF_EVERY_OUTCOME))(
    'runs over no edge from 30 to 200 columns, and says nothing unknown: %s',
    (_, results) => {
      for (const width of [30, 50, 80, 120, 200])
        for (const line of reachTable(results, width).split('\n')) {
          expect(Array.from(line).length, line).toBeLessThanOrEqual(width);
          expect(line).not.toMatch(/undefined|NaN|\bnull\b|\bCI\b/);
        }
    },
  );
});
