import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { readScenario } from '../../../src/scenario/read.js';
import { fitChance } from '../../../src/study/chances/chance.js';
import { fitLearning } from '../../../src/study/chances/learning.js';
import type { Written } from '../../../src/study/chances/measured.js';
import { spansOf } from '../../../src/study/chances/spans.js';
import { fitStops } from '../../../src/study/chances/stops.js';
import { inTurn } from '../../../src/study/chances/two-looks.js';
import {
  writtenBounded,
  writtenChance,
  writtenFailures,
  writtenLearning,
} from '../../../src/study/chances/written.js';

const SOURCE = { file: 'counts.csv', from: '2027-08-16', to: '2027-10-29' };

/** The scenario's reader knows the word; what stands beside it there is looked at in a test of its own. */
const withWords = (value: Written): Written =>
  typeof value !== 'object'
    ? value
    : Object.fromEntries(
        Object.entries(value).map(([key, inner]) => [
          key,
          key === 'basis' && typeof inner === 'object' ? 'measured' : withWords(inner),
        ]),
      );

/** A scenario with what was written in its place, as its own reader has it. */
function read(parts: { creates?: Written; chance?: Written; learning?: Written; failures?: Written }) {
  const { creates, chance, learning, failures } = parts;
  const text = stringify({
    scenario: 'Written',
    programme: {
      start: '2027-03-01',
      quantity: 20,
      rate: { 'per day': 2 },
      options: { colour: { red: '40 %', white: '60 %' } },
    },
    calendars: { days: { hours: ['07:00-15:30'] } },
    sites: {
      works: {
        calendar: 'days',
        stations: { booth: failures === undefined ? {} : { failures: withWords(failures) }, bay: {} },
      },
    },
    defects: { runs: {} },
    route: [
      {
        step: 'spray',
        at: 'booth',
        work: '1 h',
        ...(learning === undefined ? {} : { learning: withWords(learning) }),
        creates: { runs: withWords(creates ?? '5 %') },
      },
      {
        step: 'look',
        at: 'bay',
        work: '20 min',
        finds: { runs: { chance: withWords(chance ?? '90 %'), repair: '10 min' } },
      },
    ],
  });
  const { scenario, problems } = readScenario(text, 'written.yaml', () => '');
  expect(problems).toBeUndefined();
  return scenario!;
}

describe('what is written for a scenario', () => {
  it('is a chance that reads back as counted, with how many, when and where', () => {
    const written = writtenChance(fitChance([{ units: 84, found: 7, options: {} }]), SOURCE);
    expect(written).toEqual({
      value: '8.33333333 %',
      basis: { measured: 84, found: 7, from: '2027-08-16', to: '2027-10-29', file: 'counts.csv' },
    });
    const scenario = read({ creates: written });
    expect(JSON.stringify(scenario.route)).toContain('0.0833333333');
    expect(scenario.assumptions.map(({ path, basis }) => [path, basis])).toEqual([
      ['route[0].creates.runs', 'measured'],
    ]);
  });

  it('is a chance by option where that matters, each value with its own count', () => {
    const written = writtenChance(
      fitChance([
        { units: 100, found: 20, options: { colour: 'red' } },
        { units: 300, found: 12, options: { colour: 'white' } },
      ]),
      { file: 'counts.csv' },
    );
    expect(written).toEqual({
      usual: { value: '4 %', basis: { measured: 300, found: 12, file: 'counts.csv' } },
      colour: { red: { value: '20 %', basis: { measured: 100, found: 20, file: 'counts.csv' } } },
    });
    expect(read({ creates: written }).assumptions.map(({ path, value }) => [path, value])).toEqual([
      ['route[0].creates.runs.usual', '4 %'],
      ['route[0].creates.runs.colour.red', '20 %'],
    ]);
  });

  it('is 0 % with a remark where none was found', () => {
    expect(writtenChance(fitChance([{ units: 60, found: 0, options: {} }]), { file: 'a.csv' })).toEqual({
      value: '0 %',
      basis: { measured: 60, found: 0, file: 'a.csv' },
      note: 'none in 60; may be up to 4.9 %',
    });
  });

  it('is a detection chance from two inspections', () => {
    const { detection } = inTurn({ units: 400, first: 60, second: 12 }, 'the same share'),
      written = writtenBounded(detection!, 72, SOURCE);
    // (0.891 - 0.632) / (2 * 1.96)
    expect(written).toMatchObject({
      value: '80 %',
      note: '95 % interval 63.2 % to 89.1 %',
      basis: { 'standard error': expect.closeTo(0.066, 3) as number },
    });
    expect(JSON.stringify(read({ chance: written }).route)).toContain('0.8');
  });

  it('is learning with its rate, form and floor; nothing where there is none', () => {
    const times = Array.from({ length: 60 }, (_, i) => ({
        unit: i + 1,
        minutes: 300 * Math.max(0.55, (i + 1) ** Math.log2(0.8)) * (1 + 0.01 * ((i % 3) - 1)),
      })),
      fit = fitLearning(times),
      written = writtenLearning(fit, SOURCE, 60)!,
      scenario = read({ learning: written });
    expect(written).toMatchObject({
      rate: { basis: { 'standard error': expect.closeTo(fit.curve!.slopeError, 6) as number } },
      floor: { basis: { measured: 60 } },
      'built before': 60,
    });
    const [{ learning }] = scenario.route as unknown as [{ learning: { rate: number; floor: number } }];
    expect(learning).toMatchObject({
      rate: expect.closeTo(fit.rate!.value, 8) as number,
      floor: expect.closeTo(fit.floor!, 8) as number,
      curve: 'unit',
      builtBefore: 60,
    });
    const flat = fitLearning(times.map(({ unit }) => ({ unit, minutes: 90 + (unit % 2) })));
    expect(writtenLearning(flat, SOURCE)).toBeNull();
  });

  it('is failures that read back as fitted, and nothing without one', () => {
    const stops = Array.from({ length: 20 }, (_, i) => ({
        from: 1000 * (i + 1) + 150 * ((i * 7) % 5),
        to: 1000 * (i + 1) + 150 * ((i * 7) % 5) + 15 + ((i * 11) % 9) * ((i * 11) % 9),
      })),
      fit = fitStops(spansOf([{ from: 0, to: 21500, stops }])),
      written = writtenFailures(fit, 'calendar time', SOURCE)!,
      scenario = read({ failures: written });
    expect(fit.toFailure.chosen).toBe('weibull');
    expect(written).toMatchObject({ by: 'calendar time', every: { basis: { measured: 20 } } });
    const text = JSON.stringify(scenario.sites);
    const { shape, scale } = fit.toFailure.weibull!;
    expect(text).toContain(`"shape":${Number(shape.value.toPrecision(9))}`);
    expect(text).toContain(`"scale":${Number(scale.value.toPrecision(9))}`);
    expect(
      writtenFailures(fitStops(spansOf([{ from: 0, to: 60, stops: [] }])), 'operating time', SOURCE),
    ).toBeNull();
  });
});
