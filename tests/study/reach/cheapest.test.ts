import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requiredBy } from '../../../src/scenario/changes/requires.js';
import type { PossibleChange } from '../../../src/scenario/types/possible.js';
import { cheapestNotShort } from '../../../src/study/reach/search/cheapest.js';
import { cheapestOutside } from '../../../src/study/reach/search/cheapest-outside.js';
import { Choices, type Counts, isWithin } from '../../../src/study/reach/search/choices.js';
import type { Pool, Standing } from '../../../src/study/reach/search/pool.js';

interface Made {
  readonly price: number;
  readonly atMost: number;
  readonly excludes?: number | undefined;
  readonly requires?: number | undefined;
}

/** Changes by number; what is excluded or required comes before them, so that there is no circle. */
function choicesOf(all: readonly Made[], budget = Infinity, changes = Infinity): Choices {
  const named = all.map(
    ({ price, atMost, excludes, requires }, i): PossibleChange => ({
      name: `c${i}`,
      relief: { kind: 'place', of: `s${i}`, site: undefined, which: undefined },
      ...{ changes: undefined, price, day: 0, readyAfter: undefined, atMost },
      excludes: excludes === undefined || excludes >= i ? [] : [`c${excludes}`],
      requires: requires === undefined || requires >= i || requires === excludes ? [] : [`c${requires}`],
    }),
  );
  const known = new Map(named.map((each) => [each.name, each]));
  return new Choices(
    {
      withRequired: (name) => new Map([...requiredBy(known.get(name)!, known), name].map((one) => [one, 1])),
      forbidden: (set) => {
        for (const [name, times] of set) {
          const { atMost, excludes, requires } = known.get(name)!;
          if (
            times > atMost! ||
            requires.some((one) => !set.has(one)) ||
            excludes.some((one) => set.has(one))
          )
            return name;
        }
        return null;
      },
    },
    named,
    { budget, changes },
  );
}

const everySet = ({ most }: Choices): Counts[] =>
  most.reduce<number[][]>(
    (sets, times) => sets.flatMap((set) => Array.from({ length: times + 1 }, (_, n) => [...set, n])),
    [[]],
  );

const made = fc.record({
  price: fc.integer({ min: 0, max: 9 }),
  atMost: fc.integer({ min: 1, max: 3 }),
  excludes: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined, freq: 3 }),
  requires: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined, freq: 3 }),
});
const limits = fc.record({
  budget: fc.constantFrom(Infinity, 12, 20),
  changes: fc.constantFrom(Infinity, 2, 4),
});

/** By looking at every set there is. */
const byHand = (choices: Choices, ok: (counts: Counts) => boolean): Counts | null =>
  everySet(choices)
    .filter((counts) => choices.isAllowed(counts) && ok(counts))
    .sort((a, b) => choices.compare(a, b))
    .at(0) ?? null;

describe('the cheapest set that is part of none', () => {
  it('is that of all sets looked at one by one, with limits, excludes and requires', () => {
    fc.assert(
      fc.property(
        fc.array(made, { minLength: 1, maxLength: 5 }),
        limits,
        fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 5, maxLength: 5 }), { maxLength: 6 }),
        (all, { budget, changes }, ruled) => {
          const choices = choicesOf(all, budget, changes),
            out = ruled.map((each) => choices.most.map((most, i) => Math.min(most, each[i])));
          expect(cheapestOutside(choices, out)).toEqual(
            byHand(choices, (counts) => out.every((each) => !isWithin(counts, each))),
          );
        },
      ),
      { seed: 16, numRuns: 300 },
    );
  });
});

/** A pool that knows what every set does, of changes of which none hurts; it counts the sets it was asked for. */
class Known {
  asked = 0;
  private readonly shorts: Counts[] = [];

  constructor(private readonly isShort: (counts: Counts) => boolean) {}

  whyNot(): null {
    return null;
  }
  get largestShort(): Counts[] {
    return this.shorts.filter((one) => !this.shorts.some((other) => other !== one && isWithin(one, other)));
  }
  mayBeShort(): boolean {
    return true;
  }
  standing(counts: Counts): Promise<Standing> {
    if (this.shorts.some((short) => isWithin(counts, short))) return Promise.resolve('short');
    this.asked++;
    if (!this.isShort(counts)) return Promise.resolve('reaches');
    this.shorts.push(counts);
    return Promise.resolve('short');
  }
}

describe('the cheapest set that is not short', () => {
  it('is that of all sets looked at one by one, whatever they do together, as long as none hurts', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(made, { minLength: 2, maxLength: 5 }),
        limits,
        // Sets that do; all that have them in them do as well: any monotone rule can be said so.
        fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 5, maxLength: 5 }), {
          minLength: 1,
          maxLength: 4,
        }),
        async (all, { budget, changes }, doing) => {
          const choices = choicesOf(all, budget, changes),
            enough = doing.map((each) => choices.most.map((most, i) => Math.min(most, each[i]))),
            reaches = (counts: Counts): boolean => enough.some((each) => isWithin(each, counts)),
            pool = new Known((counts) => !reaches(counts)),
            found = await cheapestNotShort(choices, pool as unknown as Pool, []);
          expect(found?.counts ?? null).toEqual(byHand(choices, reaches));
        },
      ),
      { seed: 16, numRuns: 300 },
    );
  });

  it('is found among 16,384 sets by asking for fewer than a hundred', async () => {
    const choices = choicesOf(Array.from({ length: 7 }, (_, i) => ({ price: 10 + 3 * i, atMost: 3 }))),
      enough = [0, 2, 0, 1, 0, 0, 1],
      pool = new Known((counts) => !isWithin(enough, counts)),
      found = await cheapestNotShort(choices, pool as unknown as Pool, []);
    expect(found?.counts).toEqual(enough);
    expect(pool.asked).toBeLessThan(100);
  });
});
