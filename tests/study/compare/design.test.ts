import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { type CompareDesign, compareDesign } from '../../../src/study/compare/design.js';
import { compared } from '../../../src/study/compare/verdict.js';
import { answerOf } from '../../../src/study/run/fixed-design.js';
import { playModel } from '../../flow/run-yaml.js';

/** Two steps of 2 h and 1 h at 24 h a day, 4 units, one after the other: out at 3, 5, 7 and 9 h. */
const YAML = `
scenario: four units
programme: { start: 2027-03-01, arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { bench: {}, trim bench: {} } } }
costs: { currency: EUR, unit: { day: 240 } }
route: [{ step: build, at: bench, work: 2 h }, { step: trim, at: trim bench, work: 1 h }]
`;
const read = (whatIfs: string, yaml = YAML): CompareDesign => {
  const { scenario } = readScenario(yaml, 'four.yaml', () => '');
  const { whatIfs: found, problems } = readWhatIfs(
    whatIfs,
    'what-ifs.yaml',
    { text: yaml, file: 'four.yaml' },
    () => '',
  );
  expect(problems).toBeUndefined();
  return compareDesign({
    scenario: scenario!,
    file: 'four.yaml',
    whatIfs: found!,
    whatIfsFile: 'what-ifs.yaml',
    replications: 3,
    seed: 's',
    level: 0.95,
  });
};
const study = (whatIfs: string, yaml = YAML, workers = 1) => answerOf(read(whatIfs, yaml), { workers });

describe('a comparison', () => {
  it('has the differences that follow by hand, with verdicts by what is better', async () => {
    // Build in 1 h: out at 2, 3, 4 and 5 h, each after 2 h instead of 3; the last 4 h sooner.
    const {
      whatIfs: [quick],
      measures,
      base,
      differenceLevel,
    } = await study(
      'quick: { changes: { route.build.work: 1 h } }\nslow: { changes: { route.build.work: 3 h } }',
    );
    expect(differenceLevel).toBeCloseTo(0.975, 12);
    expect(measures.map(({ id }) => id)).toEqual([
      'throughput',
      'lead mean',
      'lead p90',
      'wip',
      'last unit',
      'cost',
    ]);
    const of = (id: string) => quick.compared.find(({ measure }) => measure === id)!;
    expect(of('lead mean').difference).toMatchObject({ n: 3, level: differenceLevel });
    expect(of('lead mean').difference.mean).toBeCloseTo(-1 / 24, 9);
    expect(of('last unit').difference.mean).toBeCloseTo(-4 / 24, 9);
    // 240 a day in work is 10 an hour; three hours become two.
    expect(of('cost').difference.mean).toBeCloseTo(-10, 6);
    // 4 in 9 h against 4 in 5 h, days of 24 h.
    expect(of('throughput').difference.mean).toBeCloseTo((4 * 24) / 5 - (4 * 24) / 9, 6);
    // WIP: 12 unit hours in 9 h, 8 in 5 h: more.
    expect(of('wip').difference.mean).toBeCloseTo(8 / 5 - 12 / 9, 8);
    expect(quick.compared.map(({ verdict }) => verdict)).toEqual([
      'better',
      'better',
      'better',
      'worse',
      'better',
      'better',
    ]);
    expect(base.values[4].value.mean).toBeCloseTo(9 / 24, 9);
    expect(of('lead mean').relative!.mean).toBeCloseTo(-1 / 3, 9);
  });

  it('says so where nothing differs', async () => {
    const {
      whatIfs: [room],
      answer,
    } = await study(
      'room: { changes: { sites.hall.stations.bench.places: 1, sites.hall.stations.trim bench.buffer: 5 } }',
    );
    expect(room.compared[0]).toMatchObject({
      verdict: 'no difference seen',
      words: 'the same in every replication',
      pairingGain: null,
    });
    expect(answer).toMatch(
      /No what-if is seen to ship more or less\. No change of the mean lead time is seen\.$/,
    );
  });

  it('is the same for any number of threads, and from readings made one by one', async () => {
    const yaml = YAML.replace('work: 2 h', 'work: { exponential: { mean: 2 h } }'),
      text = 'room: { changes: { sites.hall.stations.trim bench.buffer: 5 } }';
    const one = await study(text, yaml),
      two = await study(text, yaml, 2);
    expect(two).toEqual(one);
    const design = read(text, yaml),
      gathering = design.gather();
    design.variants.forEach(({ model, read: of }, v) => {
      [1, 2, 3].forEach((r) => {
        gathering.take(of(playModel(model, 's', r).seen), v);
      });
    });
    expect(gathering.found()).toEqual(one);
  });

  it('reports gridlock of a what-if as a finding, and in the answer', async () => {
    // Sent back, a unit needs the bench that the next one blocks, which needs the test place of the first.
    const yaml = `
scenario: send back
programme: { start: 2027-03-01, arrivals: saturated, quantity: 6 }
sites: { hall: { stations: { bench: { buffer: unlimited }, test: { buffer: 1 } } } }
route:
  - { step: build, at: bench, work: 1 h }
  - { step: check, at: test, work: 1 h, fails: { chance: 50 %, back to: build } }
`;
    const {
      whatIfs: [tight],
      findings,
      answer,
    } = await study(
      'tight: { changes: { sites.hall.stations.bench.buffer: 0, sites.hall.stations.test.buffer: 0 } }',
      yaml,
    );
    expect(tight.gridlocks).toBeGreaterThan(0);
    expect(findings[0]).toMatch(
      /^tight: gridlock in \d of 3 replications; its other values speak of the time before it$/,
    );
    expect(answer).toMatch(/In gridlock at least once: tight\.$/);
  });
});

describe('the verdict on paired values', () => {
  const measure = { id: 'lead mean', unit: 'days', better: 'less' } as const;

  it('has the paired t interval and says how large a difference may still be', () => {
    // Differences 1, -1, 2, 0: mean 0.5, variance 5/3, t(3; 0.975) = 3.182446 (tables of Student's t):
    // half-width 3.182446 sqrt(5/12) = 2.054264.
    const { difference, verdict, words } = compared(measure, [10, 12, 11, 13], [11, 11, 13, 13], 0.95, 0.95);
    expect(difference.mean).toBeCloseTo(0.5, 12);
    expect(difference.low).toBeCloseTo(0.5 - 2.054264, 5);
    expect(difference.high).toBeCloseTo(0.5 + 2.054264, 5);
    expect([verdict, words]).toEqual(['no difference seen', 'no difference seen larger than 2.55 days']);
  });

  it('is better for less where less is better, and worse for more', () => {
    expect(compared(measure, [10, 12, 11], [8, 10.1, 9], 0.95, 0.95).verdict).toBe('better');
    expect(compared(measure, [8, 10.1, 9], [10, 12, 11], 0.95, 0.95).verdict).toBe('worse');
    expect(compared({ ...measure, better: 'more' }, [8, 10.1, 9], [10, 12, 11], 0.95, 0.95).verdict).toBe(
      'better',
    );
  });

  it('is not settled with one pair, whatever the others', () => {
    expect(compared(measure, [10, NaN], [8, 9], 0.95, 0.95)).toMatchObject({
      verdict: 'not settled',
      words: 'not settled, 1 replication in which both have a value',
    });
  });
});
