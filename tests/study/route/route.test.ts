import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { routeMap } from '../../../src/study/route/route.js';
import type { RouteMap } from '../../../src/study/route/types.js';
import {
  back,
  chance,
  feeder,
  lane,
  minutes,
  scenario,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

const routesOf = (of: Scenario): RouteMap => routeMap(of, compile(of));
const stationsOn = ({ entries }: RouteMap['main']): string[] =>
  entries.map((each) => (each.kind === 'stop' ? each.station : each.lane));

/** Three steps at two benches; what the last finds goes back to the first of the second bench. */
const looped = (finds: number): Scenario =>
  scenario({
    sites: { hall: site({ a: station(), b: station(), spare: station() }) },
    defects: { flaw: { note: undefined } },
    route: [
      step('cut', 'a', { work: minutes(5) }),
      step('weld', 'b', { work: minutes(5), creates: { flaw: chance(0.5) } }),
      step('look', 'b', { finds: { flaw: back(finds, 'weld', { limit: 1000 }) } }),
    ],
  });

describe('the routes of a scenario', () => {
  it('have one stop for steps that follow each other at one station, and say what stands nowhere', () => {
    const { main, idle } = routesOf(looped(1));
    expect(main.entries).toMatchObject([
      {
        kind: 'stop',
        station: 'a',
        site: 'hall',
        steps: [{ step: { name: 'cut' }, passes: null, workMin: 5 }],
      },
      { kind: 'stop', station: 'b', steps: [{ step: { name: 'weld' } }, { step: { name: 'look' } }] },
    ]);
    expect(idle.stations).toEqual([{ name: 'spare', site: 'hall' }]);
  });

  it.each([1, 0.5])(
    'send back what is found: half of the units have a flaw, %d of these are found',
    (finds) => {
      const { main } = routesOf(looped(finds));
      expect(main.backs).toMatchObject([{ from: 'look', to: 'weld', fromEntry: 1, toEntry: 1 }]);
      const look = main.entries[1]?.kind === 'stop' ? main.entries[1].steps[1] : undefined;
      // A flaw that was overlooked is looked for again only on units that are sent back, of which there are none.
      expect(main.backs[0]?.chance).toBeCloseTo(0.5 * finds, 6);
      expect(look?.passes).toBeCloseTo(1 - 0.5 * finds, 6);
    },
  );

  it('pass all that are only sampled at the share of what is found, not of what comes by', () => {
    const sampled = looped(1),
      { main } = routesOf({
        ...sampled,
        route: sampled.route.map((entry, i) =>
          i === 2 && entry.kind === 'step' ? { ...entry, sample: { oneIn: 5, by: 'turn' as const } } : entry,
        ),
      });
    expect(main.backs[0]?.chance).toBeCloseTo(0.5, 6);
  });

  it('have side lines that leave where own parts come off and join where they are taken', () => {
    const { main, sides } = routesOf(
      scenario({
        sites: { hall: site({ a: station(), b: station(), bench: station(), rig: station() }) },
        feeders: {
          doors: feeder([step('trim', 'bench', { work: minutes(3) })], { kind: 'own', target: 0 }),
          axles: feeder([step('turn', 'rig', { work: minutes(3) })]),
        },
        route: [
          step('strip', 'a', { takesOff: ['doors'] }),
          step('rest', 'b', { parts: { axles: 2 } }),
          step('close', 'a', { parts: { doors: 'own', axles: 1 } }),
        ],
      }),
    );
    expect(stationsOn(main)).toEqual(['a', 'b', 'a']);
    expect(main.entries.map((each) => each.kind === 'stop' && each.isAgain)).toEqual([false, false, true]);
    expect(sides).toMatchObject([
      {
        name: 'doors',
        kind: 'own',
        leaves: { side: null, entry: 0, step: 'strip' },
        joins: [{ side: null, entry: 2, step: 'close' }],
      },
      {
        name: 'axles',
        kind: 'stock',
        leaves: null,
        joins: [
          { entry: 1, step: 'rest' },
          { entry: 2, step: 'close' },
        ],
      },
    ]);
  });

  it('part a station where what came off is taken back at it', () => {
    const { main } = routesOf(
      scenario({
        sites: { hall: site({ a: station(), bench: station() }) },
        feeders: { doors: feeder([step('trim', 'bench')], { kind: 'own', target: 0 }) },
        route: [step('strip', 'a', { takesOff: ['doors'] }), step('close', 'a', { parts: { doors: 'own' } })],
      }),
    );
    expect(stationsOn(main)).toEqual(['a', 'a']);
  });

  it('have lanes with the means of their times, and name those that nothing takes', () => {
    const { main, idle } = routesOf(
      scenario({
        sites: { one: site({ a: station() }), two: site({ b: station() }) },
        lanes: {
          road: lane('one', 'two', { drive: { kind: 'uniform', low: 10, high: 30 }, load: minutes(4) }),
          spare: lane('two', 'one'),
        },
        route: [step('do', 'a'), { kind: 'lane', lane: 'road', when: {} }, step('end', 'b')],
      }),
    );
    expect(main.entries[1]).toEqual({
      kind: 'trip',
      lane: 'road',
      from: 'one',
      to: 'two',
      when: {},
      loadMin: 4,
      driveMin: 20,
      unloadMin: 0,
      returnMin: 0,
    });
    expect(idle.lanes).toEqual(['spare']);
  });
});

describe('the routes of every scenario of the repository', () => {
  const files = ['scenarios', 'scenarios/rules'].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => join(folder, name)),
  );

  it.each(files)('%s: every step stands once, send-backs lead back, shares are shares', (file) => {
    const read = readScenario(readFileSync(file, 'utf8'), file, (name) =>
      readFileSync(join(dirname(file), name), 'utf8'),
    ).scenario;
    if (read === undefined) throw new Error(file);
    const { main, sides } = routesOf(read),
      lines = [main, ...sides],
      written = [read.route, ...Object.values(read.feeders).map(({ route }) => route)];
    lines.forEach(({ entries, backs }, i) => {
      const steps = entries.flatMap((each) => (each.kind === 'stop' ? each.steps : []));
      expect(steps.map(({ step: { name } }) => name)).toEqual(
        written[i]?.flatMap((entry) =>
          entry.kind === 'step' ? (entry.sideBySide ?? [entry]).map(({ name }) => name) : [],
        ),
      );
      for (const { passes } of steps)
        if (passes !== null) expect(passes).toSatisfy((p: number) => p >= 0 && p <= 1);
      for (const { fromEntry, toEntry, chance: share } of backs) {
        expect(toEntry).toBeLessThanOrEqual(fromEntry);
        expect(share).toSatisfy((p: number) => p >= 0 && p <= 1);
      }
    });
  });
});
