import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reliefsFiles } from '../../../src/report/files/reliefs.js';
import { priceText, roughRange, whatItTakes } from '../../../src/report/first/lines/offer.js';
import { reliefsFirst } from '../../../src/report/first/reliefs.js';
import { simulateFirst } from '../../../src/report/first/simulate.js';
import { reliefsPage } from '../../../src/report/page/studies/reliefs.js';
import { textOf } from '../../../src/report/sheets/cells.js';
import { reliefsTable } from '../../../src/report/terminal/reliefs.js';
import type { Offer } from '../../../src/study/priced/offer.js';
import { rankedByPrice } from '../../../src/study/priced/per-gain.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import type { Results } from '../../../src/study/simulate/results.js';

const resultsOf = (study: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../reports/${study}/results.json`, import.meta.url), 'utf8'));
const offer: Offer = {
  ...{ names: ['booth'], currency: 'EUR', price: 410000, pricePerUnit: 410000 / 480, day: 0 },
  ...{ readyAfter: '5 months', atMost: 1, needs: [] },
};
/** The demo's results with these offers, by the text of the relief. */
function withOffers(offers: Readonly<Record<string, Offer>>): ReliefsResults {
  const results = resultsOf('reliefs') as ReliefsResults;
  return {
    ...results,
    base: { ...results.base, plannedEnd: null },
    reliefs: rankedByPrice(results.reliefs.map((each) => ({ ...each, offer: offers[each.text] ?? null }))),
  };
}
const BOOTH = 'one place more at colour booth',
  PAINTERS = 'one person more in painters (coachworks)';

describe('what is said of the price of a change', () => {
  it('ends with the command that finds what it takes in all, where the scenario names changes', () => {
    const of = (offered: Offer | null | undefined): string =>
      whatItTakes('a.yaml', [{ offer: offered }], 5)?.command ?? 'none';
    expect([of(offer), of(null), of(undefined)]).toEqual([
      'rateproof reach a.yaml --rate 5',
      'rateproof reach a.yaml --rate 5',
      'none',
    ]);
    expect(whatItTakes('a.yaml', undefined)).toBe(null);
  });

  it('is the price, that of a unit, the lead time, what it needs and what it costs a day', () => {
    expect(priceText(offer)).toBe('410,000 EUR, 854 a unit, ready 5 months after the order');
    expect(priceText({ ...offer, readyAfter: null, day: 40, needs: ['a', 'b'], pricePerUnit: null })).toBe(
      '410,000 EUR, not without “a” and “b”, then 40 EUR a day',
    );
    expect(priceText({ ...offer, price: 0, pricePerUnit: 0, readyAfter: null })).toBe('0 EUR');
  });
  it('is that it is not given where it is not', () => {
    expect(priceText(null)).toBe('price not given');
    expect(priceText(undefined)).toBe('price not given');
    expect(priceText({ ...offer, price: null, pricePerUnit: null })).toBe(
      'price not given, ready 5 months after the order',
    );
  });
  it('stands on the first screens of reliefs and simulate', () => {
    const { toDo: begin } = reliefsFirst(withOffers({ [BOOTH]: offer }));
    expect(begin.brief).toContain('Begin with “booth”, for 410,000 EUR once: 0.');
    expect(begin.more).toContain('Price: 410,000 EUR, 854 a unit, ready 5 months after the order.');
    const unpriced = reliefsFirst(withOffers({})).toDo;
    expect(unpriced.brief).toContain('colour booth (price not given): 0.');
    expect(unpriced.more).not.toContain('Price:');
    const needs = withOffers({ [BOOTH]: { ...offer, needs: ['oven', 'crane'] } });
    expect(reliefsFirst(needs).toDo.brief).toContain(
      ', for 410,000 EUR once, not without “oven” and “crane”: 0.',
    );
    const results = resultsOf('rescue-tender') as Results,
      constraint = results.constraint!;
    const toDo = (of: Offer | null) => {
      const culprit = { ...constraint.culprit!, offer: of };
      return simulateFirst({ ...results, constraint: { ...constraint, culprit, tried: [culprit] } }).toDo;
    };
    expect(toDo(offer).brief).toMatch(/ with “booth”, for 410,000 EUR once: 0\.29 of the 0\.56 missing/);
    expect(toDo(offer).more).toMatch(/^Price: 410,000 EUR, 854 a unit, ready 5 months after the order\. /);
    expect(toDo(null).brief).toMatch(/ \(price not given\): 0\.29 of /);
  });
});

describe('the least money for a unit a day', () => {
  it('is where to begin, ahead of the largest gain, and what is left of a saving is told with the price', () => {
    const results = withOffers({ [BOOTH]: offer, [PAINTERS]: { ...offer, names: ['p'], price: 18000 } }),
      gain = results.reliefs.find(({ text }) => text === PAINTERS)!.gain,
      { costPerUnit, lastUnitDays } = results.reliefs.find(({ text }) => text === PAINTERS)!;
    expect(results.reliefs.find(({ text }) => text === BOOTH)).toMatchObject({ rank: 1, rankPerPrice: 2 });
    const first = reliefsFirst(results);
    expect(first.toDo.brief).toBe(
      'Begin with “p”, for 18,000 EUR once: ' + `${gain.mean.toFixed(2)} a day more, most for the money.`,
    );
    expect(first.toDo.more).toContain(' The largest gain: “booth” (410,000 EUR, ');
    // Dates and money are those of what is advised, not of the largest gain.
    expect(first.when.brief).toContain(` With it ${Math.round(-lastUnitDays!.mean)} days sooner.`);
    const left = Math.round((costPerUnit!.mean + 410000 / 480) / 10) * 10;
    expect(first.toDo.more).toContain(
      `; with its price shared out over all units about ${Math.abs(left)} ${left < 0 ? 'less' : 'more'}.`,
    );
  });
  it('has two digits', () => {
    expect(roughRange({ mean: 14085, low: 8586, high: 39176, level: 0.95, n: 9 })).toBe(
      '14,000 (8,600 to 39,000)',
    );
  });
});

describe('prices of change in the report of reliefs', () => {
  it('have columns in the terminal, a table on the page and columns in reliefs.csv', async () => {
    const results = withOffers({ [BOOTH]: offer, [PAINTERS]: { ...offer, names: ['p'], price: 18000 } });
    expect(reliefsTable(results, 240)).toMatch(/one place more at colour booth .* 410,000 +1,600,000 +2$/m);
    const table = reliefsPage(results).tables.find(({ id }) => id === 'prices')!;
    expect(table.rows.map((row) => row.slice(0, 4).map(textOf))).toEqual([
      ['one person more on every shift in painters (coachworks)', '1', '18,000', '5 months'],
      [BOOTH, '2', '410,000', '5 months'],
    ]);
    const csv = String((await reliefsFiles(results)).get('reliefs.csv')).split('\n');
    expect(csv[0]).toMatch(
      /,fresh,change,price,price_per_unit,price_a_day,ready_after,at_most,needs,price_per_gain_mean,/,
    );
    expect(csv[1]).toMatch(/,yes,booth,410000,854\.1666667,0,5 months,1,,/);
  });
  it('are nowhere where the scenario names no changes', () => {
    const results = resultsOf('reliefs') as ReliefsResults,
      plain = {
        ...withOffers({}),
        reliefs: results.reliefs.map((each) => ({ ...each, offer: undefined, pricePerGain: undefined })),
      };
    expect(reliefsTable(plain, 240)).not.toContain('by price');
    expect(reliefsPage(plain).tables.map(({ id }) => id)).not.toContain('prices');
  });
});
