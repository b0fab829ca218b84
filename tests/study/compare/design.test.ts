import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { type CompareDesign, compareDesign } from '../../../src/study/compare/design.js';
import type { CompareResults } from '../../../src/study/compare/results.js';
import { sameZone, type Zones } from '../../../src/study/compare/zones.js';
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
const read = (whatIfs: string, yaml = YAML, zones?: Zones): CompareDesign => {
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
    zones,
  });
};
const study = async (whatIfs: string, yaml = YAML, workers = 1, zones?: Zones): Promise<CompareResults> =>
  (await answerOf(read(whatIfs, yaml, zones), { workers })).results;

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
    // Two what-ifs in six measures; the values beside, and so the base in the answer, have the same level.
    expect(differenceLevel).toBeCloseTo(1 - 0.05 / 12, 12);
    expect(new Set([...base.values, ...quick.compared].map(({ value: { level } }) => level))).toEqual(
      new Set([differenceLevel]),
    );
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
      verdict: 'no difference that matters',
      words: 'the same in every replication',
      pairingGain: null,
    });
    expect(answer).toMatch(
      /No difference that matters: room\. Lead time without a difference that matters: room\. A difference matters beyond 0\.107 units a working day \(1 %\) and 0\.0013 days of lead time \(1 %\)\. In brackets: /,
    );
  });

  it('takes the zone that is asked, each measure its own, and tells it in per cent and in its unit', async () => {
    // Build in 118 min: out at 178, 296, 414 and 532 min, each after 178 min instead of 180: 1.1 % less. All four
    // after 532 min instead of 540: 1.5 % more a day.
    const { measures, whatIfs } = await study('quick: { changes: { route.build.work: 118 min } }', YAML, 1, {
      ...sameZone(0.02),
      'lead-time': 0.01,
    });
    const verdict = (id: string) => whatIfs[0].compared.find(({ measure }) => measure === id)!.verdict;
    expect(verdict('throughput')).toBe('no difference that matters');
    expect(verdict('last unit')).toBe('no difference that matters');
    expect(verdict('lead mean')).toBe('better');
    expect(measures[0].zone.share).toBe(0.02);
    // 2 % of 4 in 9 h, days of 24 h; 1 % of 3 h.
    expect(measures[0].zone.amount).toBeCloseTo((0.02 * 4 * 24) / 9, 8);
    expect(measures[1].zone.amount).toBeCloseTo(0.01 / 8, 8);
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
    expect(gathering.found().results).toEqual(one);
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
      /^tight: \d of 3 replications stood still \((first )?on 2027-03-01\); (its|their) values end there \(gridlock\)$/,
    );
    expect(answer).toMatch(/In gridlock at least once: tight\.$/);
  });
});
