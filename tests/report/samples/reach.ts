import { readFileSync } from 'node:fs';
import type {
  FrontierResult,
  MadeResult,
  ReachResults,
  StepResult,
} from '../../../src/study/reach/results.js';
import { reachSentence } from '../../../src/study/reach/sentence.js';

/** A run of the demo, of invented data, without what was seen in the weeks judged. */
export const SAMPLE = JSON.parse(
  readFileSync(new URL('./reach.json', import.meta.url), 'utf8'),
) as ReachResults;

/** The sample with some things changed, and its sentence as the study would say it. */
export function changed(how: Partial<ReachResults>): ReachResults {
  const results = { ...SAMPLE, ...how };
  return { ...results, answer: { sentence: reachSentence(results) } };
}

const [NOW, FIRST, ...LATER] = SAMPLE.steps;
const LAST = LATER.at(-1)!;
export const made = (name: string, times = 1): MadeResult => ({ name, times, from: null, orderBy: null });

/** As far as it goes is the first step, and the last of the way brings nothing that is sure. */
export const NOT_REACHED = changed({
  outcome: 'not reached',
  verdict: 'falls short',
  keptUp: { ...SAMPLE.keptUp!, share: 0, count: 0, n: 40 },
  constraint: { ...SAMPLE.constraint, ...LATER[0].stopped, askedPerDay: 4 },
  search: { ...SAMPLE.search, finalists: [] },
  steps: [NOW, FIRST, { ...LATER[0], gain: { ...FIRST.gain!, mean: 0.004, low: -0.008, high: 0.016 } }],
  frontier: SAMPLE.frontier.map((set, i) => ({ ...set, isChosen: i === 4 })),
});

export const NOT_SETTLED = changed({ outcome: 'not settled', verdict: 'not settled' });
export const HOLDS = changed({
  outcome: 'holds already',
  steps: [{ ...NOW, throughput: LAST.throughput }],
  frontier: [{ ...SAMPLE.frontier[0], throughput: LAST.throughput, isChosen: true }],
});

/** The last unit out by a day, in 80 of 100 builds. */
export function byDay(date: string, how: Partial<ReachResults> = {}): ReachResults {
  const inTime = <Of extends StepResult | FrontierResult>(build: Of, i: number): Of => ({
    ...build,
    byDate: { share: i / 10, low: i / 10, high: i / 10, level: 0.95, count: 4 * i, n: 40 },
  });
  return changed({
    goal: { kind: 'date', date, sure: 0.8 },
    keptUp: null,
    constraint: { ...SAMPLE.constraint, askedPerDay: null },
    steps: SAMPLE.steps.map((step, i) => inTime(step, 3 * i)),
    frontier: SAMPLE.frontier.map(inTime),
    ...how,
  });
}

/** No change has a price, and nothing else has one. */
const FREE = { costPerUnit: null, day: 0 };
export const NO_PRICES = changed({
  currency: '',
  possible: SAMPLE.possible.map((each) => ({ ...each, price: null })),
  steps: SAMPLE.steps.map((step) => ({
    ...step,
    ...FREE,
    price: null,
    money: step.made === null ? 0 : null,
  })),
  frontier: SAMPLE.frontier.map((set) => ({ ...set, ...FREE, money: set.made.length === 0 ? 0 : null })),
});

/** A cheaper set was decided ahead of the one that was chosen, and is not settled. */
export const CHEAPER_OPEN = changed({
  search: {
    ...SAMPLE.search,
    finalists: [
      {
        made: [made('second colour booth'), made('one polish bay more')],
        money: 456_000,
        replications: 160,
        side: null,
      },
      ...SAMPLE.search.finalists,
    ],
  },
});

export const LONG =
  'a second colour booth with its own oven, its own extraction and a crew of its own on both shifts';

/** Nine steps, of which the fifth brings nothing that is sure; every third has a long name, one is made thrice. */
export function nineSteps(): ReachResults {
  const prices = [420_000, 36_000, 9000, 2500, 2500, 95_000, 4000, 18_000, 3000];
  let money = 0;
  const steps = prices.map((price, i): StepResult => {
    money += price;
    const mean = 3.43 + 0.06 * (i + 1);
    return {
      ...FIRST,
      ...{ price, money },
      made: {
        ...made(i % 3 === 0 ? `${LONG} ${i + 1}` : `change ${i + 1}`, i === 2 ? 3 : 1),
        orderBy: '2027-03-16',
      },
      gain: { ...FIRST.gain!, mean: 0.06, low: i === 4 ? -0.01 : 0.04, high: 0.08 },
      throughput: { ...FIRST.throughput, mean, low: mean - 0.01, high: mean + 0.01 },
    };
  });
  return changed({
    steps: [NOW, ...steps],
    possible: steps.map((step) => ({ ...SAMPLE.possible[0], name: step.made!.name, things: [] })),
    search: { ...SAMPLE.search, finalists: [] },
  });
}

/** Every way that it can come out, and what is hard to lay out. */
export const OF_EVERY_OUTCOME: Readonly<Record<string, ReachResults>> = {
  reached: SAMPLE,
  'not reached': NOT_REACHED,
  'not settled': NOT_SETTLED,
  'holds already': HOLDS,
  'a cheaper set that is open': CHEAPER_OPEN,
  'a day': byDay('2028-04-10'),
  'a day that is not reached': byDay('2028-03-10', { outcome: 'not reached' }),
  'no prices': NO_PRICES,
  'nine steps with long names': nineSteps(),
};
