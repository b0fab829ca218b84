import { describe, expect, it } from 'vitest';
import { advised } from '../../../src/study/priced/advised.js';
import type { Offer } from '../../../src/study/priced/offer.js';

const change = (name: string, mean: number, price?: number | null, needs: readonly string[] = []) => ({
  name,
  gain: { mean, low: mean - 0.05, high: mean + 0.05, level: 0.95, n: 20 },
  offer:
    price === undefined
      ? undefined
      : ({
          ...{ names: [name], currency: 'EUR', price, pricePerUnit: null, day: 0 },
          ...{ readyAfter: null, atMost: null, needs },
        } satisfies Offer),
});
const booth = change('booth', 0.3, 420000),
  hour = change('hour', 0.2, 3000),
  painters = change('painters', 0.25, 18000);

describe('what to begin with', () => {
  it('costs least for what it brings: 15,000 a unit a day against 72,000 and 1.4 million', () => {
    expect(advised([booth, painters, hour])).toBe(hour);
  });
  it('is the cheapest of those that are enough alone, where any is', () => {
    expect(advised([hour, booth, painters], ({ gain }) => gain.low >= 0.2 - 1e-9)).toBe(painters);
    expect(advised([hour, change('cheap', 0.6, 1)], ({ name }) => name === 'hour')).toBe(hour);
  });
  it('brings most where no price is known, or only with what it needs', () => {
    expect(advised([change('a', 0.1), change('b', 0.3), change('c', 0.2, null)])?.name).toBe('b');
    expect(advised([change('a', 0.3), change('b', 0.2, 100, ['a'])])?.name).toBe('a');
  });
  it('is not what does not surely gain, whatever it costs', () => {
    expect(advised([change('free', 0.01, 0), hour])).toBe(hour);
  });
  it('is nothing where nothing helps', () => {
    const none: ReturnType<typeof change>[] = [];
    expect(advised(none)).toBeUndefined();
  });
});
