import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { OWN_NOTES, takeAssumptions } from '../../../src/scenario/file/assumptions.js';
import { withIncludes } from '../../../src/scenario/file/include/include.js';
import { readSource } from '../../../src/scenario/file/source.js';
import { jsonSchema, keySchema } from '../../../src/scenario/json-schema.js';
import { allForms } from '../../../tools/docs/forms.js';
import { type Edit, fixture, readText, said } from '../read-small.js';

const small = fixture('small.yaml');
const readWith = (...edits: Edit[]) => {
  const { scenario, problems } = readText(
    edits.reduce((text, [before, after]) => text.replace(before, after), small),
  );
  expect(problems).toBeUndefined();
  return scenario!;
};
const listOf = (...edits: Edit[]) =>
  readWith(...edits).assumptions.map(({ path, value, basis, note }) => [path, value, basis, note]);

describe('what is said of a value', () => {
  it('stands beside the keys of a map, and leaves the scenario as it was', () => {
    const edit: Edit = [
      'work: 20 min',
      'work: { low: 15 min, likely: 20 min, high: 30 min, basis: estimate, note: asked two painters }',
    ];
    expect(listOf(edit)).toEqual([
      ['route[2].work', '{ low: 15 min, likely: 20 min, high: 30 min }', 'estimate', 'asked two painters'],
    ]);
    const plain = readWith(['work: 20 min', 'work: { low: 15 min, likely: 20 min, high: 30 min }']);
    expect({ ...readWith(edit), assumptions: [] }).toEqual(plain);
    expect(digest(readWith(edit))).toBe(digest(plain));
  });

  it('keeps of a time its parts, so that low and high can be changed later', () => {
    const [first] = readWith(['work: 20 min', 'work: { mean: 42 min, cv: 0.3, basis: guess }']).assumptions;
    expect(first).toMatchObject({ at: ['route', 2, 'work'], raw: { mean: '42 min', cv: 0.3 } });
  });

  it('stands beside value where it is a number, a text or a list', () => {
    const scenario = readWith(
      ['places: 4', 'places: { value: 4, basis: measured }'],
      ['hours: ["06:00-14:30"]', 'hours: { value: ["06:00-14:30"], basis: guess, note: not agreed yet }'],
    );
    expect(scenario.sites['coachworks'].stations['oven'].places).toBe(4);
    expect(scenario.assumptions.map(({ path, value, basis }) => [path, value, basis])).toEqual([
      ['calendars.days.hours', '["06:00-14:30"]', 'guess'],
      ['sites.coachworks.stations.oven.places', '4', 'measured'],
    ]);
  });

  it('of the whole file or of a section is said in general; of anything inside it is not', () => {
    const said = takeAssumptions({
      basis: 'guess',
      lanes: { basis: 'estimate', road: { trucks: 2, drive: { mean: '3 h', note: 'by the map' } } },
      sites: { hall: { stations: { bay: { places: 2 }, jig: { places: 3, basis: 'guess' } } } },
      route: [{ step: 'look', work: { value: '20 min', basis: 'measured' }, process: '1 h' }],
    }).assumptions.map(({ path, basis, inGeneral }) => [path, basis, inGeneral ?? false]);
    expect(said).toEqual([
      ['lanes.road.trucks', 'estimate', true],
      ['lanes.road.drive', 'estimate', true],
      ['sites.hall.stations.bay.places', 'guess', true],
      ['sites.hall.stations.jig.places', 'guess', false],
      ['route[0].work', 'measured', false],
      ['route[0].process', 'guess', true],
    ]);
  });

  it('of a whole step holds for each quantity inside that says nothing itself; names, dates and words are none', () => {
    expect(
      takeAssumptions({
        route: [
          {
            step: 'look',
            at: 'bay',
            basis: 'guess',
            note: 'see the minutes',
            crew: { inspectors: 1 },
            work: { value: '20 min', basis: 'measured' },
            sample: '1 in 5',
            rework: 'skip',
            from: '2027-03-01',
            finds: { runs: { chance: '90 %', 'back to': 'prime' } },
          },
        ],
      }).assumptions.map(({ path, basis, note }) => [path, basis, note]),
    ).toEqual([
      ['route[0].crew.inspectors', 'guess', 'see the minutes'],
      ['route[0].work', 'measured', undefined],
      ['route[0].sample', 'guess', 'see the minutes'],
      ['route[0].finds.runs.chance', 'guess', 'see the minutes'],
    ]);
  });

  it('of the whole file holds for all of it, without the note of the scenario', () => {
    const all = listOf([/^scenario: .*$/m.exec(small)![0], '$&\nbasis: estimate']);
    expect(all.length).toBeGreaterThan(10);
    expect(new Set(all.map(([, , basis, note]) => `${basis} ${note}`))).toEqual(
      new Set(['estimate undefined']),
    );
  });

  it('may be a note alone, which is then only a remark', () => {
    expect(listOf(['work: 20 min', 'work: { constant: 20 min, note: as always }'])).toEqual([]);
  });
});

describe('problems around what is said of values', () => {
  it.each<[what: string, before: string, after: string, expected: string]>([
    [
      'an unknown word',
      'places: 4',
      'places: { value: 4, basis: guessed }',
      'sites.coachworks.stations.oven.places.basis: one of "measured", "estimate", "guess"; got "guessed"; did you mean "guess"?',
    ],
    [
      'no word',
      'places: 4',
      'places: { value: 4, basis: }',
      'sites.coachworks.stations.oven.places.basis: one of "measured", "estimate", "guess"; got nothing',
    ],
    [
      'a basis of nothing',
      'bay: { places: 2 }',
      'bay: { basis: guess }',
      'sites.coachworks.stations.bay.basis: a quantity that it describes: beside it in a map, or { value: 6, basis: guess }; got none',
    ],
    [
      'a key too many',
      'places: 4',
      'places: { value: 4, unit: many }',
      'sites.coachworks.stations.oven.places.unit: only basis and note beside value; value can be no name; got "unit"',
    ],
    [
      'a value in a value',
      'places: 4',
      'places: { value: { value: 4 } }',
      'sites.coachworks.stations.oven.places.value: a value, without another { value: ... } around it; got a map of value',
    ],
    [
      'a note that is a number',
      'places: 4',
      'places: { value: 4, note: 5 }',
      'sites.coachworks.stations.oven.places.note: a remark in words; note can be no name; got 5',
    ],
    [
      'a wrong value beside a basis',
      'places: 4',
      'places: { value: 0, basis: guess }',
      'sites.coachworks.stations.oven.places.value: a whole number from 1 to 1,000,000; got 0',
    ],
    [
      'a wrong name inside',
      'at: oven',
      'at: { value: ofen }',
      'at.value: no station of this name; got "ofen"; did you mean "oven"?',
    ],
  ])('%s', (_, before, after, expected) => {
    const found = said([before, after]);
    expect(found.filter((line) => line.endsWith(expected))).toHaveLength(1);
    const row = small.slice(0, small.indexOf(before)).split('\n').length;
    expect(found.every((line) => line.startsWith(`${row}:`))).toBe(true);
  });

  it('point at the key where a name is wrong, also of a wrapped value', () => {
    const found = said(['crew: { painters: 2 }', 'crew: { paintres: { value: 2, basis: guess } }']);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('.crew.paintres: no crew of this name');
  });
});

describe('the words basis, note and value', () => {
  const forms = allForms(keySchema());
  it('are keys of nothing else, but for the notes that are known to be', () => {
    expect(
      forms.filter(({ keys }) => 'basis' in keys || 'value' in keys).map(({ address }) => address),
    ).toEqual([]);
    expect(forms.filter(({ keys }) => 'note' in keys).map(({ address }) => address)).toEqual(OWN_NOTES);
  });

  it('are offered by the schema for editors in every map, and every other value may stand beside them', () => {
    const withWords = allForms(jsonSchema());
    expect(withWords.length).toBeGreaterThan(2 * forms.length);
    expect(
      withWords
        .filter(({ keys, address }) => address !== 'basis' && !('basis' in keys && 'note' in keys))
        .map(({ address }) => address),
    ).toEqual([]);
    expect(withWords.some(({ address, keys }) => address === 'sites.*.crews.*' && 'value' in keys)).toBe(
      true,
    );
    expect(withWords.some(({ address, keys }) => address === 'time' && 'value' in keys)).toBe(true);
  });
});

describe('the words of an assumption', () => {
  it('are those of the whole scenario, whatever file it stands in, and tell two apart', () => {
    const main = `
scenario: words
programme: { start: 2027-03-01, quantity: 10, rate: { per day: 4 } }
include: part.yaml
calendars: { days: { hours: ["06:00-14:00", "14:00-22:00"] } }
sites:
  hall:
    calendar: days
    crews: { fitters: { headcount: [{ value: 3, basis: guess }, 2] } }
    stations:
      bench:
        failures:
          - { every: 40 h, repair: { mean: 1 h, cv: 1, basis: guess } }
          - { every: 90 h, repair: { mean: 2 h, cv: 1, basis: guess } }
route:
  - { step: one, at: bench, work: 1 h }
  - include: part.yaml
`;
    const part =
      'route: [{ step: two, at: bench, crew: { fitters: 1 }, work: { mean: 1 h, cv: 0.3, basis: estimate } }]\n';
    const { assumptions } = withIncludes(readSource(main, 'words.yaml'), () => part);
    expect(assumptions.map(({ words, path }) => [words, path])).toEqual([
      ['the number of fitters on the early shift', 'sites.hall.crews.fitters.headcount[0]'],
      [
        'the repair of bench (sites.hall.stations.bench.failures[0].repair)',
        'sites.hall.stations.bench.failures[0].repair',
      ],
      [
        'the repair of bench (sites.hall.stations.bench.failures[1].repair)',
        'sites.hall.stations.bench.failures[1].repair',
      ],
      ['the work of two', 'route[1].work'],
    ]);
  });
});
