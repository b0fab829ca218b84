import { describe, expect, it } from 'vitest';
import type { EventKind, FloorEvent } from '../../../../src/records/log/event.js';
import { chanceResults } from '../../../../src/study/measured/chances.js';
import { readFloor } from '../../../../src/study/measured/log/floor.js';
import { scenarioOf, sourceOf } from '../../validate/shop.js';

/** Invented. Dirt is made at one step, gaps at two, a part's flaw on its feeder. */
const LINE = scenarioOf(`
scenario: Finds by hand
programme: { start: 2027-03-01, rate: { per day: 10 }, quantity: 100, options: { colour: { red: 50 %, white: 50 % } } }
defects: { dirt: {}, gap: {}, flaw: {} }
sites: { works: { stations: { a: {}, b: {}, c: {}, d: {}, e: {} } } }
feeders: { doors: { stock: 2, route: [{ step: press, at: e, work: 1 min, creates: { flaw: 10 % } }] } }
route:
  - { step: weld, at: a, work: 5 min, creates: { gap: 10 % } }
  - { step: coat, at: b, work: 5 min, creates: { dirt: 10 %, gap: 10 % }, parts: { doors: 1 } }
  - { step: look, at: c, work: 5 min, finds: { dirt: { chance: 80 %, repair: 5 min }, gap: { chance: 80 %, back to: coat }, flaw: { chance: 50 %, repair: 1 min } } }
  - { step: gate, at: d, work: 5 min, finds: { dirt: { chance: 100 %, repair: 5 min }, gap: { chance: 100 %, repair: 5 min } }, fails: { chance: 10 %, repair: 5 min } }
`);

/** `start coat`, `find look dirt coat`: kind, step, and of a find what and where it was made. */
function eventsOf(
  units: readonly (readonly string[])[],
  options: readonly (string | undefined)[] = [],
): FloorEvent[] {
  let at = Date.UTC(2027, 2, 1, 8) / 60_000;
  const event = (
    object: string,
    kind: string,
    step = '',
    values = {},
    type = 'unit',
    others: string[] = [],
  ) => ({
    ...{ at: (at += 1), kind: kind as EventKind, object, type, step, station: '', others, values },
  });
  return units.flatMap((said, u) => [
    event(`U${u}`, 'enter', '', options[u] === undefined ? {} : { colour: options[u] }),
    ...said.map((line) => {
      const [kind = '', step, defect = '', madeAt = ''] = line.split(' ');
      return kind === 'join'
        ? event(`U${u}`, 'join', step, {}, 'unit', [`doors:${defect}`])
        : event(
            kind.startsWith('part-') ? defect : `U${u}`,
            kind.replace('part-', ''),
            step,
            kind === 'find' ? { defect, ...(madeAt === '' ? {} : { 'made at': madeAt }) } : {},
            kind.startsWith('part-') ? 'doors' : 'unit',
          );
    }),
    event(`U${u}`, 'ship'),
  ]);
}
const CLEAN = [
  'start weld',
  'end weld',
  'start coat',
  'end coat',
  'start look',
  'end look',
  'start gate',
  'end gate',
];
const withFind = (step: string, ...finds: string[]): string[] =>
  CLEAN.flatMap((line) =>
    line === `end ${step}` ? [...finds.map((find) => `find ${step} ${find}`), line] : [line],
  );

async function counted(events: readonly FloorEvent[]) {
  const floor = await readFloor(LINE, sourceOf(events), { by: [] }),
    counts = floor.trials.counts('2027-03-01', '2027-03-01');
  const of = (defect: string, madeAt: string | null) =>
    counts
      .find((each) => each.defect === defect && each.madeAt === madeAt)
      ?.looks.map(({ step, rows }) => [
        step,
        rows.reduce((sum, { units }) => sum + units, 0),
        rows.reduce((sum, { found }) => sum + found, 0),
      ]);
  return { of, floor, counts };
}

describe('finds of a floor log', () => {
  it('count each unit at each inspection until the defect is found on it', async () => {
    const { of } = await counted(
      eventsOf([
        CLEAN,
        withFind('look', 'dirt coat'),
        withFind('gate', 'dirt coat'),
        withFind('gate', 'failed'),
        CLEAN,
      ]),
    );
    expect(of('dirt', 'coat')).toEqual([
      ['look', 5, 1],
      ['gate', 4, 1],
    ]);
    expect(of('failed', null)).toEqual([['gate', 5, 1]]);
  });

  it('know who made it where the log says, and drop it where it does not', async () => {
    const { of, floor } = await counted(
      eventsOf([withFind('look', 'gap weld'), withFind('gate', 'gap coat'), withFind('look', 'gap'), CLEAN]),
    );
    expect(of('gap', 'weld')).toEqual([
      ['look', 3, 1],
      ['gate', 2, 0],
    ]);
    expect(of('gap', 'coat')).toEqual([
      ['look', 3, 0],
      ['gate', 3, 1],
    ]);
    expect(floor.trials.unclear).toBe(2);
  });

  it('end where a step is done again: what it makes then is another matter', async () => {
    const again = [
      ...CLEAN.slice(0, 5),
      ...[
        'find look gap weld',
        'end look',
        'start coat',
        'end coat',
        'start look',
        'find look dirt coat',
        'end look',
      ],
      ...CLEAN.slice(6),
    ];
    const { of } = await counted(eventsOf([again, CLEAN]));
    expect(of('gap', 'weld')).toEqual([
      ['look', 2, 1],
      ['gate', 1, 0],
    ]);
    // Looked at once with nothing found, then coated again.
    expect(of('dirt', 'coat')).toEqual([
      ['look', 2, 0],
      ['gate', 1, 0],
    ]);
  });

  it('go with a part into the unit that it joins', async () => {
    const unit = [
      'part-start press 7',
      'part-end press 7',
      ...CLEAN.slice(0, 2),
      'join coat 7',
      ...CLEAN.slice(2, 5),
    ];
    const { of } = await counted(eventsOf([[...unit, 'find look flaw press', ...CLEAN.slice(5)], CLEAN]));
    expect(of('flaw', 'press')).toEqual([['look', 1, 1]]);
  });

  it('become chances: what is made is what is found over what is seen, by option where it matters', async () => {
    const red = Array.from({ length: 60 }, (_, i) => (i < 30 ? withFind('look', 'dirt coat') : CLEAN)),
      white = Array.from({ length: 60 }, (_, i) => (i < 4 ? withFind('gate', 'dirt coat') : CLEAN)),
      events = eventsOf([...red, ...white], [...red.map(() => 'red'), ...white.map(() => 'white')]),
      { counts } = await counted(events),
      dirt = chanceResults(counts, LINE, 'log.csv').find(({ defect }) => defect === 'dirt')!;
    // 30 at the first, 4 more at the second, which finds all that is left: 30 / 34 and 34 / 120.
    expect(dirt.looks[0].finds?.value).toBeCloseTo(30 / 34, 12);
    expect(dirt.made?.value).toBeCloseTo(34 / 120, 12);
    expect(dirt.found?.by?.option).toBe('colour');
    const written = Object.fromEntries(dirt.entries.map(({ path, value }) => [path, value]));
    expect(written['route[look].finds.dirt.chance']).toMatch(
      /^\{ value: 88\.2352941 %, basis: \{ measured: 34,/,
    );
    expect(written['route[coat].creates.dirt']).toMatch(
      /usual: \{ value: 50 %, .*colour: \{ white: \{ value: 6\.66666667 %/,
    );
    expect(dirt.told.join(' ')).toMatch(/What gate misses no later inspection shows/);
  });

  it('of fewer than ten leave what an inspection finds as the scenario has it', async () => {
    const of = async (first: number, second: number) => {
      const units = Array.from({ length: 60 }, (_, i) =>
          i < first
            ? withFind('look', 'dirt coat')
            : i < first + second
              ? withFind('gate', 'dirt coat')
              : CLEAN,
        ),
        { counts } = await counted(eventsOf(units));
      return chanceResults(counts, LINE, 'log.csv').find(({ defect }) => defect === 'dirt')!;
    };
    const [few, enough] = [await of(3, 6), await of(4, 6)],
      paths = ({ entries }: typeof few) => entries.map(({ path }) => path);
    expect(paths(few)).toEqual(['route[coat].creates.dirt']);
    expect(few.told.join(' ')).toMatch(/of 9, and fewer than 10 tell too little: what look finds stays/);
    expect(paths(enough)).toEqual(['route[look].finds.dirt.chance', 'route[coat].creates.dirt']);
    expect(enough.told.join(' ')).not.toMatch(/too little/);
    // What is made does not depend on that share where the last inspection finds all.
    expect(few.made?.value).toBeCloseTo(9 / 60, 12);
  });
});
