import { describe, expect, it } from 'vitest';
import { readFactors } from '../../../src/scenario/changes/factors.js';
import { namedChanges, possibleOf } from '../../../src/scenario/changes/possible.js';
import { scenarioWith } from '../../../src/scenario/data.js';
import { digest } from '../../../src/scenario/digest.js';
import { edited } from '../../../src/scenario/file/edit-path.js';
import { scenarioData } from '../../../src/scenario/read.js';
import { reliefsOf } from '../../../src/scenario/reliefs/kinds.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { digestOf, plant, readPlant, saidOf, scenarioOf } from './plant.js';

const jigsOf = ({ sites }: Scenario): number | undefined => sites['a'].stations['jig'].places;
const crewOf = ({ sites }: Scenario): unknown => sites['a'].crews['welders'].headcount;

describe('a change that is made from the first day on', () => {
  it('gives the digest of the scenario that a planner would write by hand', () => {
    const byHand = digestOf(plant({ places: 3, welders: 5, buffer: 4, target: 3, standing: 9 }));
    for (const yes of ['yes', 'true', '2028-01-31', '1999-01-01'])
      expect(
        digestOf(
          plant({
            jig: ', made: { times: 2 }',
            crew: `, made: ${yes}`,
            shelf: ', made: { times: 3, from: 2028-01-30 }',
            stock: ', made: {}',
          }),
        ),
      ).toBe(byHand);
    expect(scenarioOf(plant({ jig: ', made: yes' })).before).toBeUndefined();
    expect(digestOf(plant())).not.toBe(byHand);
  });

  it('may need an edit of what it requires, whichever stands first', () => {
    const night = 'changes: [{ calendars: { night: { hours: ["22:00-06:00"] } } }], made: yes',
      worked = 'changes: [{ sites.a.calendar: night }], requires: z night, made: yes';
    const both = [`    a worked: { ${worked} }`, `    z night: { ${night} }`];
    const [one, other] = [both, both.toReversed()].map((lines) =>
      scenarioOf(plant({ more: `${lines.join('\n')}\n` })),
    );
    expect(Object.keys(one.calendars)).toEqual(['night']);
    expect(digest(one)).toBe(digest(other));
  });
});

describe('a change that is made from a later day on', () => {
  const { before, ...later } = scenarioOf(
    plant({
      jig: ', made: 2028-02-10',
      crew: ', made: 2028-03-01',
      shelf: ', made: 2028-02-10',
      stock: ', made: yes',
    }),
  );
  it('leaves the scenario as it is without it for the days before, a stage for each day', () => {
    expect(digest(later)).toBe(digestOf(plant({ places: 2, welders: 5, buffer: 2, target: 3, standing: 5 })));
    expect(before?.map(({ until, scenario }) => [until, digest(scenario)])).toEqual([
      ['2028-02-10', digestOf(plant({ target: 3, standing: 1 }))],
      ['2028-03-01', digestOf(plant({ places: 2, buffer: 2, target: 3, standing: 5 }))],
    ]);
  });
  it('changes the digest, by its day too, but not by its price', () => {
    const digests = ['', ', made: 2028-02-10', ', made: 2028-02-11', ', made: yes'].map((jig) =>
      digestOf(plant({ jig })),
    );
    expect(new Set(digests).size).toBe(4);
    expect(digestOf(plant({ jig: ', made: 2028-02-10' }).replace('1000', '2000'))).toBe(digests[1]);
  });
  it('lets reliefs reach the days before as well', () => {
    const scenario = scenarioOf(plant({ jig: ', made: 2028-02-10' })),
      place = reliefsOf(scenario).find(({ text }) => text === 'one place more at jig');
    const more = place!.change(scenario);
    expect([jigsOf(more), ...(more.before ?? []).map((stage) => jigsOf(stage.scenario))]).toEqual([3, 2]);
    // Not a space that is counted from the end: the shelf comes later.
    const shelf = scenarioOf(plant({ shelf: ', made: { times: 3, from: 2028-02-10 }' })),
      space = reliefsOf(shelf).find(({ text }) => text === 'one space more ahead of jig');
    expect(space!.change(shelf).before?.[0]?.scenario.sites['a']?.stations['jig']?.buffer).toBe(2);
  });
});

describe('what is left to be made', () => {
  const leftOf = (of: Parameters<typeof plant>[0]): unknown =>
    possibleOf(scenarioOf(plant(of))).map(({ name, atMost, requires, made }) => [
      name,
      atMost,
      requires,
      made,
    ]);
  it('is what is not made, less often, without what is there, and nothing that is excluded', () => {
    expect(leftOf({})).toEqual([
      ['jig more', 2, [], undefined],
      ['crew', undefined, ['jig more'], undefined],
      ['fewer', undefined, [], undefined],
      ['shelf', undefined, [], undefined],
      ['doors more', undefined, [], undefined],
    ]);
    expect(leftOf({ jig: ', made: 2028-03-01', shelf: ', made: { times: 5 }' })).toEqual([
      ['jig more', 1, [], undefined],
      ['crew', undefined, [], undefined],
      ['fewer', undefined, [], undefined],
      ['shelf', undefined, [], undefined],
      ['doors more', undefined, [], undefined],
    ]);
    expect(leftOf({ jig: ', made: { times: 2 }', crew: ', made: yes' })).toEqual([
      ['shelf', undefined, [], undefined],
      ['doors more', undefined, [], undefined],
    ]);
    // Fewer people exclude the crew, and what requires the crew goes with it.
    expect(
      leftOf({ fewer: ', made: yes', more: '    late: { relief: work, of: weld, requires: crew }\n' }),
    ).toEqual([
      ['jig more', 2, [], undefined],
      ['shelf', undefined, [], undefined],
      ['doors more', undefined, [], undefined],
    ]);
  });
  it('names no change anew: those that are made stay named', () => {
    expect(namedChanges(scenarioOf(plant({ jig: ', made: yes' }))).map(({ made }) => made)).toEqual([
      { times: 1, from: undefined },
      ...Array<undefined>(4).fill(undefined),
    ]);
  });
});

describe('a change that cannot be made', () => {
  it.each([
    [{ jig: ', made: no' }, /^costs\.changes\.jig more\.made: yes, a day of the calendar.*map.*; got "no"$/],
    [{ jig: ', made: 2028-02-30' }, /^costs\.changes\.jig more\.made: yes, a day .*; got "2028-02-30"$/],
    [{ jig: ', made: { tims: 2 }' }, /made\.tims: one of the keys times, from; .* did you mean "times"\?$/],
    [{ jig: ', made: { from: soon }' }, /made\.from: a day of the calendar, .*; got "soon"$/],
    [
      { more: '    jig mor: { made: yes }\n' },
      /^costs\.changes\.jig mor: the name of a change that has relief .*; got "jig mor"; did you mean "jig more"\?$/,
    ],
    [{ jig: ', made: { times: 3 }' }, /jig more\.made\.times: 2 at most, as its key at most says; got 3$/],
    [
      { fewer: ', made: { times: 2 }' },
      /fewer\.made\.times: 1, since a bundle of edits is made once; got 2$/,
    ],
    [{ crew: ', made: yes' }, /crew\.made: "jig more" made as well, which it requires$/],
    [
      { jig: ', made: 2028-03-01', crew: ', made: 2028-02-29' },
      /crew\.made: a day not before 2028-03-01, when "jig more" is there, which it requires; got "2028-02-29"$/,
    ],
    [
      { jig: ', made: 2028-03-01', crew: ', made: yes' },
      /crew\.made: a day not before 2028-03-01, .*; got the first day$/,
    ],
    [
      { jig: ', made: yes', crew: ', made: yes', fewer: ', made: 2028-03-01' },
      /fewer\.made: "crew" not made, which it excludes$/,
    ],
    [
      { jig: ', made: 2028-02-20', programme: 'length: 18 days, warm up: 2 days' },
      /jig more\.made: a day before the programme is over, which is on 2028-02-20; got "2028-02-20"$/,
    ],
    [
      { jig: ', made: 2028-02-20', programme: 'quantity: 40, until: 2028-02-20' },
      /jig more\.made: a day before the programme is over/,
    ],
    [
      { more: '    jog: { relief: place, of: jog, made: yes }\n' },
      /jog\.of: a name of which reliefs knows a place/,
    ],
    [
      {
        fewer: ', made: yes',
        more: '    none: { changes: [{ sites.a.crews.welders: 1 }], made: yes }\n',
      },
      /each value changed once; another change of the changes made together/,
    ],
    [
      {
        more: '    one route: { changes: [{ remove: feeders }, { route: [{ step: weld, at: jig, work: 1 h, crew: { welders: 1 } }] }], made: yes }\n',
        stock: ', made: yes',
      },
      /doors more\.made: a name of which reliefs knows a target stock; got "doors"$/,
    ],
  ])('%o is told in its line, once', (of, expected) => {
    const said = saidOf(of);
    expect(said[0]).toMatch(expected);
    expect(said).toHaveLength(1);
  });
  it('is not refused on its last day', () => {
    expect(saidOf({ jig: ', made: 2028-02-19', programme: 'length: 18 days, warm up: 2 days' })).toEqual([]);
  });
});

describe('edits of a scenario with changes that are made', () => {
  const text = plant({ jig: ', made: 2028-02-10', crew: ', made: 2028-02-10' }),
    whatIfs = (lines: string, of = text) =>
      readWhatIfs(lines, 'what-ifs.yaml', { text: of, file: 'made.yaml' }, () => '');
  it('come first, and what is made comes on top, on each of its days', () => {
    const [places, time, unmade] = whatIfs(`
places: { changes: [{ sites.a.stations.jig.places: 4 }] }
longer: { changes: [{ scale: { times: 2, of: weld } }] }
unmade: { changes: [{ remove: costs.changes.jig more.made }, { remove: costs.changes.crew.made }] }
`).whatIfs!;
    expect([places.scenario, places.scenario.before![0].scenario].map(jigsOf)).toEqual([5, 4]);
    expect(crewOf(places.scenario)).toEqual(crewOf(scenarioOf(plant({ welders: 5 }))));
    const { before, ...later } = time.scenario;
    const longer = (of: string): string => digestOf(of.replace('work: 60 min', 'work: 120 min'));
    expect(digest(later)).toBe(longer(plant({ places: 2, welders: 5, standing: 4 })));
    expect(before!.map(({ scenario }) => digest(scenario))).toEqual([longer(plant())]);
    expect(digest(unmade.scenario)).toBe(digestOf(plant()));
  });
  it('are refused of what a bundle that is made edits, for nothing would be left of them', () => {
    expect(whatIfs('people: { changes: [{ sites.a.crews: { welders: 4 } }] }').problems).toMatchObject([
      { line: 1, wanted: 'a value that "crew", which is made, does not change already' },
    ]);
    const lever = `levers: { people: { change: sites.a.crews.welders, from: 2, to: 6 } }\n`;
    expect(readPlant(text + lever).problems).toMatchObject([
      { path: 'levers.people.change', wanted: 'a value that "crew", which is made, does not change already' },
    ]);
    expect(readPlant(plant() + lever).problems).toBeUndefined();
  });
  it('are levels of factors as well, which may say how often a change is made', () => {
    const { factors, problems } = readFactors(
      'factors: { jigs: { change: "costs.changes[jig more].made", levels: [yes, { times: 2 }] }, ' +
        'work: { scale: times, levels: [1, 2] } }',
      'factors.yaml',
      { text: plant({ jig: ', made: 2028-02-10', shelf: ', made: 2028-02-10' }), file: 'made.yaml' },
      () => '',
    );
    expect(problems).toBeUndefined();
    expect(
      factors!.combinations.map(({ scenario }) => [jigsOf(scenario), jigsOf(scenario.before![0].scenario)]),
    ).toEqual([2, 3, 2, 3].map((places) => [places, places]));
    const { before, ...last } = factors!.combinations[3].scenario;
    const twice = (text: string): string => text.replace('60 min', '120 min').replace('20 min', '40 min');
    expect(digest(last)).toBe(digestOf(twice(plant({ places: 3, buffer: 2, standing: 8 }))));
    expect(before!.map(({ scenario }) => digest(scenario))).toEqual([
      digestOf(twice(plant({ places: 3, standing: 8 }))),
    ]);
  });
  it('may make changes, or make them on another day', () => {
    const [made] = whatIfs('sooner: { changes: [{ costs.changes.crew.made: 2028-03-01 }] }').whatIfs!;
    expect(digest(made.scenario)).toBe(
      digestOf(plant({ jig: ', made: 2028-02-10', crew: ', made: 2028-03-01' })),
    );
    expect(whatIfs('late: { changes: [{ costs.changes.crew.made: 2028-02-01 }] }').problems).toMatchObject([
      { line: 1, path: 'late: costs.changes.crew.made' },
    ]);
    expect(
      whatIfs('same: { changes: [{ costs.changes.crew.made: { from: 2028-02-10 } }] }').problems,
    ).toEqual([expect.objectContaining({ seen: 'the same as the scenario itself' })]);
  });
  it('of its data give the same as those of its file, so that levers and guesses go on working', () => {
    const data = scenarioData(text, 'made.yaml', () => ''),
      read = (value: unknown): Scenario => scenarioWith(data, value).scenario!;
    expect(digest(read(data.value))).toBe(digestOf(text));
    const moved = read(edited(data.value, ['sites', 'a', 'stations', 'jig', 'places'], 4));
    expect([moved, moved.before![0].scenario].map(jigsOf)).toEqual([5, 4]);
    const late = scenarioWith(data, edited(data.value, ['costs', 'changes', 'crew', 'made'], '2028-02-01'));
    expect(late.scenario).toBeUndefined();
    expect(late.findings).toMatchObject([{ path: ['costs', 'changes', 'crew', 'made'] }]);
  });
});
