import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { edited } from '../../../src/scenario/file/edit-path.js';
import { readScenario } from '../../../src/scenario/read.js';
import { named } from '../../../src/scenario/values/keys.js';
import { remembering } from '../../../src/scenario/values/remembering.js';

/** Counts how often it is asked. */
function counted() {
  const asked: unknown[] = [];
  const schema = z.object({ places: z.number().min(1) }).transform(({ places }) => {
    asked.push(places);
    return { places, doubled: 2 * places };
  });
  return { schema, asked };
}

describe('a schema that remembers', () => {
  it('asks of each map once, and of a map that was changed again', () => {
    const { schema, asked } = counted(),
      stations = named(schema, 'stations by name'),
      written = { booth: { places: 2 }, bench: { places: 3 } };
    const first = stations.parse(written, { jitless: true }),
      changed = stations.parse(edited(written, ['bench', 'places'], 4), { jitless: true });
    expect(first).toEqual({ booth: { places: 2, doubled: 4 }, bench: { places: 3, doubled: 6 } });
    expect(changed).toEqual({ booth: { places: 2, doubled: 4 }, bench: { places: 4, doubled: 8 } });
    expect(asked).toEqual([2, 3, 4]);
  });

  it('goes by the map, not by what is in it', () => {
    const { schema, asked } = counted(),
      both = z.array(remembering(schema)),
      one = { places: 2 };
    both.parse([one, one, { places: 2 }], { jitless: true });
    expect(asked).toEqual([2, 2]);
  });

  it('tells what is wrong with the same map each time, and at the path where it stands', () => {
    const { schema } = counted(),
      stations = named(schema, 'stations by name'),
      bad = { places: 0 };
    for (const name of ['booth', 'bench'])
      expect(stations.safeParse({ [name]: bad }, { jitless: true }).error?.issues).toMatchObject([
        { path: [name, 'places'], code: 'too_small' },
      ]);
  });

  it('finds what is wrong with an alias in each place where it is written', () => {
    const text = [
      'scenario: a line',
      'programme: { start: 2027-03-01, quantity: 5, rate: { per day: 1 } }',
      'calendars: { days: { on: Mon-Fri, hours: ["06:00-14:00"] } }',
      'sites: { hall: { zone: UTC, calendar: days, stations: { a: &a { places: 0 }, b: *a } } }',
      'route: [{ step: one, at: a, work: 1 h }, { step: two, at: b, work: 1 h }]',
    ].join('\n');
    const { problems = [] } = readScenario(text, 'line.yaml', () => '');
    expect(problems.map(({ path }) => path)).toEqual([
      'sites.hall.stations.a.places',
      'sites.hall.stations.b.places',
    ]);
  });
});
