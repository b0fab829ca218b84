import { describe, expect, it } from 'vitest';
import { readFactors } from '../../../src/scenario/changes/factors.js';
import { changedByEach } from '../../../src/study/factors/changed.js';
import { playModel } from '../../flow/run-yaml.js';
import { designOf, FACTORS, studyOf, YAML } from './made.js';

/** The same with chance in it. */
const CHANCE = YAML.replace('work: 2 h', 'work: { exponential: { mean: 2 h } }');
const ROOM = `
factors:
  room: { change: sites.hall.stations.trim bench.buffer, levels: [0, 3] }
  trim: { change: route.trim.work, levels: [1 h, 30 min, 90 min] }
`;

describe('an experiment', () => {
  it('has the effects that follow by hand', async () => {
    // The last is out after 9, 5, 10 and 9 h: two by two, built in 2 or 1 h, trimmed in 1 or 2 h.
    const { effects, combinations, measures, base, design } = await studyOf(FACTORS);
    const last = measures.findIndex(({ id }) => id === 'last unit'),
      hours = combinations.map(({ compared }) => compared[last].value.mean * 24);
    [9, 5, 10, 9].forEach((h, c) => {
      expect(hours[c]).toBeCloseTo(h, 6);
    });
    expect(effects.map(({ name, measures: of }) => [name, of[last].difference.mean * 24])).toEqual([
      ['build from 2 h to 1 h', expect.closeTo(-2.5, 6)],
      ['trim from 1 h to 2 h', expect.closeTo(2.5, 6)],
      // Both together 0, by themselves -4 and 1.
      ['build with trim', expect.closeTo(3, 6)],
    ]);
    expect(combinations.map(({ isBase }) => isBase)).toEqual([true, false, false, false]);
    expect(base.values[last].value.mean * 24).toBeCloseTo(9, 6);
    expect(design).toMatchObject({ name: 'full', run: 4, of: 4, notation: '2 x 2', resolution: null });
  });

  it('runs the scenario once, as one of the combinations or besides them', () => {
    expect(designOf(FACTORS).variants.map(({ name }) => name)).toEqual([
      'base',
      'build 1 h, trim 1 h',
      'build 2 h, trim 2 h',
      'build 1 h, trim 2 h',
    ]);
    expect(designOf(FACTORS.replace('[2 h, 1 h]', '[3 h, 1 h]')).variants).toHaveLength(5);
  });

  it('gives each interval the level at which all hold together', async () => {
    // Three effects, and three combinations against the scenario, in six measures.
    const { intervals, eachLevel, effects } = await studyOf(FACTORS);
    expect(intervals).toBe(36);
    expect(eachLevel).toBeCloseTo(1 - 0.05 / 36, 12);
    expect(
      new Set(effects.flatMap(({ measures }) => measures.map(({ difference }) => difference.level))),
    ).toEqual(new Set([eachLevel]));
  });

  it('is the same for any number of threads, and from readings made one by one', async () => {
    const one = await studyOf(ROOM, CHANCE),
      two = await studyOf(ROOM, CHANCE, 3, 2);
    expect(two).toEqual(one);
    const design = designOf(ROOM, CHANCE),
      gathering = design.gather();
    design.variants.forEach(({ model, read: of }, v) => {
      [1, 2, 3].forEach((r) => {
        gathering.take(of(playModel(model, 's', r).seen), v);
      });
    });
    expect(gathering.found().results).toEqual(one);
  });

  it('has the mean of each two levels, over all others, for its pictures', async () => {
    const { pairs, combinations } = await studyOf(FACTORS);
    expect(pairs).toHaveLength(1);
    const [{ values }] = pairs[0].means,
      shipped = combinations.map(({ compared }) => compared[0].value.mean);
    expect(values).toEqual([
      [shipped[0], shipped[2]],
      [shipped[1], shipped[3]],
    ]);
  });

  it('knows what each factor changes, also where a part of the combinations never changes one alone', () => {
    const text = `design: half${ROOM.replace(', 90 min', '')}  build: { change: route.build.work, levels: [2 h, 1 h] }\n`,
      { factors } = readFactors(text, 'f.yaml', { text: YAML, file: 'four.yaml' }, () => '');
    expect(
      changedByEach(3, factors!.combinations).map(({ things }) => things.map(({ name }) => name)),
    ).toEqual([['trim bench'], ['trim'], ['build']]);
  });

  it('reports gridlock of a combination as a finding, and in the answer', async () => {
    const yaml = `
scenario: send back
programme: { start: 2027-03-01, arrivals: saturated, quantity: 6 }
sites: { hall: { stations: { bench: { buffer: unlimited }, test: { buffer: 1 } } } }
route:
  - { step: build, at: bench, work: 1 h }
  - { step: check, at: test, work: 1 h, fails: { chance: 50 %, back to: build } }
`;
    const { findings, answer } = await studyOf(
      'factors:\n  bench: { change: sites.hall.stations.bench.buffer, levels: [unlimited, 0] }\n  test: { change: sites.hall.stations.test.buffer, levels: [1, 0] }\n',
      yaml,
    );
    expect(findings.join('\n')).toMatch(/bench 0, test 0: \d of 3 replications stood still .*\(gridlock\)/);
    expect(answer).toMatch(/In gridlock at least once: .*bench 0, test 0\.$/);
  });
});
