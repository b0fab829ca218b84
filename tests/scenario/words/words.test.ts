import { describe, expect, it } from 'vitest';
import { sayPath } from '../../../src/scenario/file/problem.js';
import { readSource } from '../../../src/scenario/file/source.js';
import { keySchema } from '../../../src/scenario/json-schema.js';
import type { Path } from '../../../src/scenario/types/problem.js';
import { wordsFor } from '../../../src/scenario/words/words.js';
import { allForms } from '../../../tools/docs/forms.js';

/** Invented, and no sound scenario: it has something of each kind. */
const ROOT = readSource(
  `
programme:
  rate: [{ from: 2027-03-01, per day: 2 }, { from: 2027-06-07, per day: 4 }]
  options: { bands: 35 %, colour: { red: 70 %, white: 30 % } }
  opening: [{ at: prime }]
calendars:
  days: { hours: ["06:30-15:00"] }
  two shifts: { hours: ["06:30-15:00", "15:00-23:30"] }
  round the clock: { hours: ["06:00-14:00", "14:00-22:00", "22:00-06:00"] }
  long: { hours: ["06:00-18:00", "18:00-06:00"] }
  odd: { hours: ["06:00-10:00", "10:00-14:00"] }
sites:
  coachworks:
    calendar: two shifts
    crews:
      painters: { headcount: [7, 6] }
      bakers: { headcount: [1, 1, 1], calendar: round the clock }
      guards: { headcount: [1, 1], calendar: long }
      cooks: { headcount: [1, 1], calendar: odd }
      fitters: 30
    stations: { colour booth: {} }
  final plant: { calendar: days, crews: { fitters: 4 }, stations: {} }
feeders: { axles: { route: [{ step: build axle, at: bench, work: 2 h }] } }
outages: [{ stations: colour booth, note: filters renewed }, { stations: colour booth }]
route:
  - { step: build body, at: jig }
  - { lane: road }
  - { at: dock, side by side: [{ step: fit dashboard }, { step: route cables }] }
  - { step: prime, at: colour booth, work: { low: 35 min, likely: 42 min, high: 60 min } }
`,
  'words.yaml',
).value;
const words = (...path: Path): string => wordsFor(path, ROOT);

describe('a value in words', () => {
  it.each<[Path, string]>([
    [['route', 3, 'work'], 'the work of prime'],
    [['route', 3, 'work', 'low'], 'the work of prime, the shortest'],
    [['route', 3, 'work', 'exponential', 'mean'], 'the work of prime, the mean'],
    [['route', 3, 'work', 'discrete', '10 min'], 'the work of prime, 10 min'],
    [['route', 3, 'work', 'mixture', 1, 'time'], 'the work of prime, part 2'],
    [['route', 3, 'work', 'mixture', 1, 'time', 'mean'], 'the work of prime, part 2, the mean'],
    [['route', 3, 'work', 'mixture', 0, 'share'], 'the work of prime, the share of part 1'],
    [['route', 2, 'side by side', 1, 'crew', 'electricians'], 'the number of electricians at route cables'],
    [['route', 2, 'at'], 'the station of the steps side by side at dock'],
    [['route', 1, 'when', 'colour'], 'the colour that goes by road'],
    [['feeders', 'axles', 'route', 0, 'work'], 'the work of build axle'],
    [
      ['sites', 'coachworks', 'crews', 'painters', 'headcount', 1],
      'the number of painters on the late shift',
    ],
    [
      ['sites', 'coachworks', 'crews', 'painters', 'headcount', 0],
      'the number of painters on the early shift',
    ],
    [['sites', 'coachworks', 'crews', 'bakers', 'headcount', 2], 'the number of bakers on the night shift'],
    [['sites', 'coachworks', 'crews', 'guards', 'headcount', 1], 'the number of guards on the night shift'],
    [['sites', 'coachworks', 'crews', 'cooks', 'headcount', 1], 'the number of cooks on shift 2'],
    [['sites', 'coachworks', 'crews', 'painters', 'headcount'], 'the number of painters'],
    [['sites', 'final plant', 'crews', 'fitters'], 'the number of fitters in final plant'],
    [['sites', 'coachworks', 'stations', 'colour booth', 'places'], 'the number of places at colour booth'],
    [
      ['sites', 'coachworks', 'stations', 'colour booth', 'changeover', 'from to', 'red', 'white', 'high'],
      'the changeover at colour booth from red to white, the longest',
    ],
    [
      ['sites', 'coachworks', 'stations', 'colour booth', 'failures', 0, 'repair'],
      'the repair of colour booth',
    ],
    [['route', 3, 'creates', 'dirt'], 'the chance of dirt from prime'],
    [['route', 3, 'creates', 'dirt', 'colour', 'red'], 'the chance of dirt from prime where colour is red'],
    [['route', 3, 'finds', 'runs', 'chance', 'usual'], 'the chance that prime finds runs'],
    [['route', 3, 'fails', 'repair', 'mean'], 'the repair after a failure at prime, the mean'],
    [['route', 3, 'fails', 'repair', 'usual'], 'the repair after a failure at prime, the usual one'],
    [
      ['route', 3, 'fails', 'repair', 'colour', 'red', 'mean'],
      'the repair after a failure at prime where colour is red, the mean',
    ],
    [['lanes', 'road', 'drive'], 'the drive on road'],
    [['supplies', 'packs', 'deliveries', 1, 'lot'], 'the lot of delivery 2 of packs'],
    [['supplies', 'packs', 'deliveries', 'lot'], 'the lot of each delivery of packs'],
    [['carriers', 'dollies', 'count'], 'the number of dollies'],
    [['programme', 'quantity'], 'the quantity'],
    [['programme', 'rate', 1, 'per day'], 'the rate a day from 2027-06-07 on'],
    [['programme', 'options', 'bands'], 'the share of units with bands'],
    [['programme', 'options', 'colour', 'red'], 'the share of units with colour red'],
    [['costs', 'people', 'default'], 'the price of an hour of all other people'],
    [['costs', 'people', 'painters', 'overtime hour'], 'the price of an overtime hour of painters'],
    [['outages', 0, 'to'], 'the end of the outage "filters renewed"'],
    [['outages', 1, 'from'], 'the beginning of the outage 2'],
    [['calendars', 'days', 'overtime', 0, 'hours'], 'the hours of overtime of days'],
    [['calendars', 'days'], 'the calendar days'],
    [['nonsense', 3, 'x'], 'nonsense[3].x'],
  ])('%j is %s', (path, expected) => {
    expect(wordsFor(path, ROOT)).toBe(expected);
  });

  it('takes a name as it is, whatever signs are in it', () => {
    expect(words('lanes', 'A {0} @ $& B', 'trucks')).toBe('the number of trucks on A {0} @ $& B');
  });
});

describe('every key that a planner can write', () => {
  /** Lists, whose items have a number in the path. */
  const LISTS = ['programme.opening', 'programme.opening.open', 'outages', 'route', 'route.side by side'];
  const pathOf = (address: string): Path => {
    const path: (string | number)[] = [];
    let here = '';
    for (const part of address.split('.')) {
      here = here === '' ? part : `${here}.${part}`;
      path.push(part === '*' ? `X of ${path.at(-1) ?? ''}` : part);
      // Entry 2 is side by side, entry 3 a step of its own.
      if (LISTS.includes(here)) path.push(here === 'route' ? (address.includes('side by side') ? 2 : 3) : 0);
    }
    return path;
  };
  /** A time is told behind the work of a step; a chance behind a defect. */
  const whole = (address: string): string =>
    address
      .replace(/^(simple-)?time(?=\.|$)/, 'route.work')
      .replace(/^chance-by-option/, 'route.creates.*')
      .replace(/^time-by-option/, 'route.fails.repair');
  const all = allForms(keySchema()).flatMap(({ address, keys }) =>
    Object.keys(keys)
      .filter((key) => key !== 'include' || address === '')
      .map((key): Path => {
        if (address === 'route' && key === 'lane') return ['route', 1, 'lane'];
        if (address === 'route' && key === 'side by side') return ['route', 2, 'side by side'];
        return pathOf(address === '' ? key : `${whole(address)}.${key}`);
      }),
  );

  it('has words of its own, without a key of the file in them', () => {
    expect(all.length).toBeGreaterThan(190);
    for (const path of all) {
      const said = wordsFor(path, ROOT);
      expect(said, sayPath(path)).toMatch(/^(the|whether|how|what|when|where) /);
      expect(said, sayPath(path)).not.toMatch(/[[\]{}@]|undefined/);
      // A key that no rule knows would be said behind a comma, as it is.
      if (!/\bwork\.|\.work$|discrete/.test(sayPath(path)))
        expect(said, sayPath(path)).not.toContain(`, ${String(path.at(-1))}`);
    }
  });

  it('is told from all others', () => {
    const by = new Map<string, Set<string>>();
    for (const path of all) {
      const said = wordsFor(path, ROOT);
      by.set(said, (by.get(said) ?? new Set()).add(sayPath(path)));
    }
    const alike = [...by].filter(([, paths]) => paths.size > 1).map(([said]) => said);
    // A time has the same parts in several forms; what may be written in two ways is one thing.
    expect(alike.filter((said) => !said.startsWith('the work of prime'))).toEqual([
      'the earlier measurement that prime is compared with',
    ]);
  });
});
