import { describe, expect, it } from 'vitest';
import { type StepTimes } from '../../../src/records/table/clocked.js';
import { fitHistograms } from '../../../src/report/charts/records/fit-histograms.js';
import { ticksIn } from '../../../src/report/charts/records/fit-panels.js';
import { fitQuantiles } from '../../../src/report/charts/records/fit-quantiles.js';
import { fitSteps } from '../../../src/report/charts/records/fit-steps.js';
import { linesOf } from '../../../src/report/first/first.js';
import { fitFirst } from '../../../src/report/first/fit.js';
import { fitPage } from '../../../src/report/page/records/fit.js';
import { LAYOUT } from '../../../src/report/style.js';
import { anyPlace } from '../../../src/study/fit/places.js';
import { type FitResults, fitResults } from '../../../src/study/fit/results.js';
import { type FittedStep, fitStep } from '../../../src/study/fit/steps.js';

/** Made up, none rounded. */
const TIMES = [
  31.3, 35.62, 38.05, 40.41, 42.77, 44.16, 47.59, 52.34, 33.81, 36.28, 39.93, 41.47, 43.12, 45.66, 49.21,
  55.58, 34.07, 37.73, 46.39, 50.84, 29.52, 61.46,
];

type Given = { minutes: readonly number[]; now?: number; path?: null; by?: StepTimes['by'] };
/** The same times need to be fitted only once, whatever the step is called. */
const fitted = new Map<string, FittedStep>();
function fittedOnce({ minutes, by = {} }: Given): FittedStep {
  const key = JSON.stringify([minutes, by]),
    one = { step: 'one', minutes, lines: [], at: minutes.map(() => NaN), units: [], by },
    step = fitted.get(key) ?? fitStep(one, '1', anyPlace('one'));
  fitted.set(key, step);
  return step;
}

function found(steps: Readonly<Record<string, Given>>, more: Partial<FitResults> = {}): FitResults {
  const all = Object.entries(steps).map(([step, given]) => ({
    ...fittedOnce(given),
    step,
    place: {
      ...anyPlace(step),
      now: given.now ?? null,
      ...(given.path === null && { path: null, notWritten: 'The step has no work in the scenario.' }),
    },
  }));
  const rows = all.reduce((sum, { times }) => sum + times.length, 0);
  return {
    ...fitResults({ head: ['step', 'minutes'], steps: [], rows, leftOut: [], oddities: [] }, all, {
      table: 't.csv',
      tableDigest: 'd',
      scenarioFile: 's.yaml',
      scenarioDigest: 'e',
      seed: '1',
    }),
    ...more,
  };
}

const wordsIn = (text: string): number => text.split(/\s+/).length;

describe('the first screen of fit', () => {
  it('says no where the scenario has surely another mean, of which step, and how sure', () => {
    const first = fitFirst(
      found({ paint: { minutes: TIMES, now: 30 }, weld: { minutes: TIMES, now: 42.7 } }),
    );
    expect(first.question).toBe('Do the clocked times agree with the scenario?');
    expect(first.answer).toBe('No: paint takes 42 % longer than it says.');
    expect(first.sure.brief).toBe('paint: 43 min clocked (39 to 47), 30 in the scenario.');
    expect(first.toDo.brief).toContain('Look at paint first');
  });
  it('says how many where several differ, and which way if it is one', () => {
    const answer = (now: readonly number[]): string =>
      fitFirst(found(Object.fromEntries(now.map((each, i) => [`s${i}`, { minutes: TIMES, now: each }]))))
        .answer;
    expect(answer([30, 25, 42])).toBe('No: 2 of 3 steps take longer than it says.');
    expect(answer([30, 60])).toBe('No: all 2 steps take other times than it says.');
    expect(answer([42, 41])).toBe('As far as the times tell, none of 2 steps differs.');
  });
  it('claims no difference from fewer than ten times, nor agreement where nothing is compared', () => {
    const few = fitFirst(found({ paint: { minutes: TIMES.slice(0, 9), now: 10 } }));
    expect(few.answer).toBe('A scenario can include the times of the step.');
    const none = fitFirst(found({ paint: { minutes: TIMES }, gone: { minutes: TIMES, path: null } }));
    expect(none.answer).toBe('A scenario can include the times of 1 of 2 steps.');
    expect(none.toDo.more).toContain('gone: The step has no work in the scenario');
  });
  it('names what speaks against the times, or that nothing was seen', () => {
    const drifting = TIMES.toSorted((a, b) => a - b),
      first = fitFirst(found({ paint: { minutes: TIMES }, weld: { minutes: drifting } }));
    expect(first.stops.brief).toBe('1 of 2 steps has a warning. weld: times drift.');
    expect(first.stops.more).toMatch(/^Times get longer with the date/);
    expect(fitFirst(found({ paint: { minutes: TIMES } })).stops.brief).toMatch(/^Nothing was seen/);
    const single = fitFirst(found({ paint: { minutes: TIMES }, weld: { minutes: [5] } }));
    expect(single.rests.brief).toBe('weld: a single time says nothing of the spread.');
  });
  it('says of an option that it is written as a factor, or not', () => {
    const cab = TIMES.map((_, i) => (i % 2 === 0 ? 'long' : 'short')),
      minutes = TIMES.map((time, i) => (i % 2 === 0 ? 2 * time : time));
    const { stops } = fitFirst(found({ paint: { minutes, by: { cab } } }));
    expect(stops.brief).toContain('depends on cab, written as a factor');
  });
  it('counts rows that are left out, by kind', () => {
    const kinds = ['duplicate', 'unknown step'] as const;
    const oddities = kinds.map((kind, i) => {
      return { kind, rule: 'left out' as const, count: i + 1, lines: [4], example: '', told: 'Left out.' };
    });
    const first = fitFirst(found({ paint: { minutes: TIMES } }, { rows: 25, used: 22, oddities }));
    expect(first.when.brief).toBe('3 of 25 are left out: duplicate 1, unknown step 2.');
  });
  it('has an answer of at most twelve words and lines that are read at a glance', () => {
    const steps = {
        'a step with a long name': { minutes: TIMES, now: 30 },
        b: { minutes: [1, 2] },
      },
      first = fitFirst(found(steps));
    expect(wordsIn(first.answer)).toBeLessThanOrEqual(12);
    for (const { brief } of linesOf(first)) expect(brief.length).toBeLessThanOrEqual(120);
  });
});

describe('pictures of fit', () => {
  it('show ten steps of many on the page, those to look at first, and say so', () => {
    const many = Object.fromEntries(
        Array.from({ length: 14 }, (_, i) => [`s${i}`, { minutes: TIMES.slice(0, 5) }]),
      ),
      results = found({ ...many, off: { minutes: TIMES, now: 20 } }),
      before = { ...LAYOUT };
    try {
      Object.assign(LAYOUT, { mostRows: 10, isCut: false });
      const { configuration, how } = fitSteps(results);
      expect(configuration.data.labels).toHaveLength(10);
      expect(configuration.data.labels?.[0]).toBe('off');
      expect(how).toContain('Of 15 steps the 10 to look at first; results.json has all.');
      expect(LAYOUT.isCut).toBe(true);
    } finally {
      Object.assign(LAYOUT, before);
    }
    expect(fitSteps(results).configuration.data.labels).toHaveLength(15);
  });
  it('say where three points or the times themselves stand', () => {
    const results = found({
      paint: { minutes: TIMES },
      weld: { minutes: TIMES.slice(0, 5) },
      trim: { minutes: TIMES.slice(0, 12) },
    });
    expect(fitHistograms(results).finding).toBe(
      'A distribution fits 1 of 3 steps; three points stand for 1; the times themselves stand for 1',
    );
    expect(fitQuantiles(results)?.finding).toBe(
      'The distribution that stands keeps inside the band of chance',
    );
    expect(fitQuantiles(found({ weld: { minutes: [5] } }))).toBeNull();
  });
  it('tell bar by bar how many times there are, and how many by the line; all of them together', () => {
    const { data } = fitHistograms(found({ paint: { minutes: TIMES } })).configuration,
      counts = data.datasets.map((set) =>
        (set.data as unknown as { y: number }[]).reduce((sum, { y }) => sum + y, 0),
      );
    expect(data.labels?.[0]).toBe('paint, 25 to 30 min');
    expect(counts[0]).toBe(22);
    expect(counts[1]).toBeGreaterThan(20);
    expect(counts[1]).toBeLessThanOrEqual(22.1);
  });
  it('have round ticks within a scale, whole ones of counts', () => {
    expect(ticksIn({ low: 3, high: 41 }, 4)).toEqual([10, 20, 30, 40]);
    expect(ticksIn({ low: 0, high: 1.08, isCount: true }, 4)).toEqual([0, 1]);
    expect(ticksIn({ low: 0, high: 1.08 }, 4)).toEqual([0, 0.5, 1]);
  });
});

it('has tables of steps, warnings, options, distributions, and of the rows left out the first hundred', () => {
  const cab = TIMES.map((_, i) => (i % 2 === 0 ? 'long' : 'short')),
    minutes = TIMES.map((time, i) => (i % 2 === 0 ? 2 * time : time)),
    leftOut = Array.from({ length: 130 }, (_, i) => ({
      line: i + 2,
      kind: 'duplicate' as const,
      cells: ['x', '5'],
    })),
    { tables, facts } = fitPage(found({ paint: { minutes, by: { cab } } }, { leftOut }));
  expect(tables.map(({ id }) => id)).toEqual(['steps', 'warnings', 'options', 'tried', 'left-out']);
  expect(tables.find(({ id }) => id === 'left-out')?.rows).toHaveLength(100);
  expect(facts).toContainEqual(['Digest', 'd']);
});
