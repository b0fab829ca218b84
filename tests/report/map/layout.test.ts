import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORMS, formOf, mapLayout } from '../../../src/report/map/layout.js';
import { type Seen, seenIn } from '../../../src/report/map/seen.js';
import type { Drawing, Shape } from '../../../src/report/map/shapes.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { randomScenario, toYaml } from '../../properties/random-scenario.js';
import {
  boxOf,
  faultsOf,
  type Mapped,
  mapped,
  mappedFile,
  pointsOf,
  SCENARIO_FILES,
  textsOf,
} from './looked.js';
import { crowdedWay, wayYaml } from './many-brackets.js';

const ALL = [...Object.values(FORMS), formOf(320), formOf(720), formOf(2200)];
const demo = mappedFile('scenarios/rescue-tender.yaml'),
  demoResults = seenIn(JSON.parse(readFileSync('reports/rescue-tender/results.json', 'utf8')) as Results);

/** Names, steps, lanes, feeders, crews that are nowhere in a drawing, whole or line after line. */
function missing({ scenario, route }: Mapped, drawing: Drawing): string[] {
  const written = textsOf(drawing.groups)
      .map(({ text }) => text)
      .join(' '),
    told = drawing.groups.map(({ about }) => about).join('\n');
  const stops = [route.main, ...route.sides].flatMap(({ entries }) =>
    entries.flatMap((each) => (each.kind === 'stop' ? [each] : [])),
  );
  const names = [
    ...Object.values(scenario.sites).flatMap(({ stations, crews }) => [
      ...Object.keys(stations),
      ...Object.keys(crews),
    ]),
    ...Object.keys(scenario.sites),
    ...Object.keys(scenario.feeders),
    ...Object.keys(scenario.supplies),
    ...Object.keys(scenario.lanes),
    ...Object.keys(scenario.carriers),
    ...Object.keys(scenario.teams),
    ...Object.keys(scenario.pulseLines),
  ];
  return [
    ...names.filter((name) => !written.includes(name)),
    ...stops
      .flatMap(({ steps }) => steps.map(({ step }) => step.name))
      .filter((name) => !told.includes(name)),
  ];
}

/** Send-backs that end elsewhere than at the marks of the step they lead to. */
function astray({ route }: Mapped, { groups }: Drawing): string[] {
  return [route.main, ...route.sides].flatMap(({ entries, backs }) =>
    backs.flatMap(({ from, to, toEntry }) => {
      const target = entries.at(toEntry),
        station = target?.kind === 'stop' ? target.station : '';
      const marks = groups
        .filter(
          ({ kind, about }) =>
            kind === 'stop' && about.startsWith(`${station}\n`) && about.includes(`\n${to}`),
        )
        .flatMap(({ shapes }) => shapes.map(boxOf));
      const ends = groups
        .filter(
          ({ kind, about }) => kind === 'back' && `${about}, by `.startsWith(`${from} back to ${to}, by `),
        )
        .flatMap(({ shapes }) =>
          shapes.slice(0, 1).flatMap((shape) => (shape.kind === 'path' ? pointsOf(shape.d).slice(-1) : [])),
        );
      const isThere = ends.some(([x, y]) =>
        marks.some(
          ({ left, top, right, bottom }) =>
            x > left - 14 && x < right + 14 && y > top - 14 && y < bottom + 14,
        ),
      );
      return isThere ? [] : [`${from} back to ${to}`];
    }),
  );
}

/** Companions whose brackets begin or end elsewhere than at the marks of their first and last stop. */
function adrift({ route }: Mapped, { groups }: Drawing, isAcross: boolean): string[] {
  const spanOf = (shapes: readonly Shape[]): [number, number] => {
    const boxes = shapes.map(boxOf);
    return isAcross
      ? [Math.min(...boxes.map(({ left }) => left)), Math.max(...boxes.map(({ right }) => right))]
      : [Math.min(...boxes.map(({ top }) => top)), Math.max(...boxes.map(({ bottom }) => bottom))];
  };
  const at = (is: (about: string) => boolean): [number, number][] =>
    groups.filter(({ kind, about }) => kind === 'stop' && is(about)).map(({ shapes }) => spanOf(shapes));
  return route.companions.flatMap((each) => {
    const isLine = each.kind === 'pulse line',
      named = (name: string) => (about: string) =>
        isLine ? about.startsWith(`${name}\n`) : new RegExp(`\n${name}([:,\n]|$)`).test(about),
      begins = at(named(isLine ? (each.stations[0] ?? '') : each.from)),
      ends = at(named(isLine ? (each.stations.at(-1) ?? '') : each.to)),
      own = groups.filter(({ kind, about }) => kind === 'bracket' && about.includes(each.name)),
      line = (shapes: readonly Shape[]): [number, number] =>
        spanOf(
          shapes.filter((shape) => shape.kind === 'path' && !shape.d.includes('Q') && !shape.d.endsWith('Z')),
        ),
      first = line(own[0]?.shapes ?? [])[0],
      last = line(own.at(-1)?.shapes ?? [])[1];
    const isThere =
      begins.some(([from]) => Math.abs(from - first) < 14) && ends.some(([, to]) => Math.abs(to - last) < 14);
    return isThere ? [] : [each.name];
  });
}

describe('the map of every scenario of the repository', () => {
  it.each(SCENARIO_FILES)('%s has nothing over another or outside, and leaves nothing out', (file) => {
    const all = mappedFile(file);
    for (const form of ALL) {
      const drawing = mapLayout(all.scenario, all.route, form);
      expect(faultsOf(drawing), `width ${form.width}`).toEqual([]);
      expect(missing(all, drawing), `width ${form.width}`).toEqual([]);
      expect(astray(all, drawing), `width ${form.width}`).toEqual([]);
      expect(adrift(all, drawing, form.columns === 0), `width ${form.width}`).toEqual([]);
    }
  });
});

describe('the map of scenarios drawn at random', () => {
  it('has nothing over another or outside, and leaves nothing out', () => {
    fc.assert(
      fc.property(randomScenario, fc.integer({ min: 320, max: 2000 }), (drawn, width) => {
        const all = mapped(toYaml(drawn)),
          drawing = mapLayout(all.scenario, all.route, formOf(width));
        expect(faultsOf(drawing)).toEqual([]);
        expect(missing(all, drawing)).toEqual([]);
        expect(astray(all, drawing)).toEqual([]);
      }),
      { numRuns: 60, seed: 1 },
    );
  });
});

describe('the map of a way with more brackets than any real line has', () => {
  it.each([formOf(320), formOf(720), formOf(1000), FORMS.paper])(
    'lays none over another, a mark or a text: $width px, $columns columns',
    (form) => {
      fc.assert(
        fc.property(crowdedWay, (drawn) => {
          const { scenario, route } = mapped(wayYaml(drawn)),
            drawing = mapLayout(scenario, route, form);
          expect(faultsOf(drawing)).toEqual([]);
          expect(adrift({ scenario, route }, drawing, form.columns === 0)).toEqual([]);
        }),
        { numRuns: 80, seed: 1 },
      );
    },
  );
});

describe('the map of the demo', () => {
  it.each(Object.entries(FORMS))('after a run has nothing over another on a %s', (_, form) => {
    const drawing = mapLayout(demo.scenario, demo.route, form, demoResults);
    expect(faultsOf(drawing)).toEqual([]);
    expect(missing(demo, drawing)).toEqual([]);
    expect(astray(demo, drawing)).toEqual([]);
  });

  it.each([undefined, demoResults])('fits on one page of A4, no name shortened', (results) => {
    const drawing = mapLayout(demo.scenario, demo.route, FORMS.paper, results);
    expect(drawing.height / drawing.width).toBeLessThanOrEqual(297 / 210);
    expect(textsOf(drawing.groups).filter(({ text }) => text.includes('…'))).toEqual([]);
  });

  it.each(Object.entries(FORMS))('says once where units start and where they leave, on a %s', (_, form) => {
    const words = textsOf(mapLayout(demo.scenario, demo.route, form).groups).map(({ text }) => text);
    expect(words.filter((each) => each === 'START')).toHaveLength(1);
    expect(words.filter((each) => each === 'SHIPPED')).toHaveLength(1);
  });

  it('has at the end of each row across the letter with which the next begins', () => {
    for (const form of [FORMS.screen, FORMS.page]) {
      const letters = textsOf(mapLayout(demo.scenario, demo.route, form).groups).filter(({ text }) =>
          /^[A-Z]$/.test(text),
        ),
        [key, ...rows] = letters.map(({ text }) => text);
      expect(key).toBe('A');
      expect(rows.length).toBeGreaterThan(8);
      expect(rows).toEqual(rows.map((_, i) => String.fromCharCode(65 + Math.floor(i / 2))));
      const [, ...placed] = letters;
      for (let i = 0; i < placed.length; i += 2) {
        expect(placed[i + 1]?.y).toBeGreaterThan(placed[i]?.y ?? Infinity);
        expect(placed[i + 1]?.x).toBeLessThan(placed[i]?.x ?? 0);
      }
    }
  });

  it('explains its signs ahead of the first plant', () => {
    for (const form of Object.values(FORMS)) {
      const { groups } = mapLayout(demo.scenario, demo.route, form),
        sign = textsOf(groups).find(({ text }) => text.startsWith('a station: a ring'))?.y ?? Infinity,
        floor = groups.find(({ kind }) => kind === 'ground')?.shapes[0];
      expect(floor?.kind === 'rect' && sign < floor.y).toBe(true);
    }
  });

  it('ticks a pulse line once a station', () => {
    const upright = mapLayout(demo.scenario, demo.route, FORMS.screen)
      .groups.filter(({ kind, about }) => kind === 'bracket' && about.startsWith('chassis line'))
      .flatMap(({ shapes }) => shapes)
      .filter((shape) => shape.kind === 'path' && boxOf(shape).left === boxOf(shape).right);
    expect(upright).toHaveLength(3);
  });

  it('explains the signs that it has, and no others', () => {
    const said = ({ scenario, route }: Mapped): string =>
      textsOf(mapLayout(scenario, route, FORMS.screen).groups)
        .map(({ text }) => text)
        .join(' ');
    const signs = [
      'goes with the unit and comes back',
      'the same people',
      'units move on together',
      'sent back, so',
    ];
    expect(signs.filter((sign) => said(demo).includes(sign))).toEqual(signs);
    const one = mappedFile('scenarios/rules/01-pulse-line.yaml');
    expect(signs.filter((sign) => said(one).includes(sign))).toEqual(['units move on together']);
    expect(said(one)).not.toMatch(/waiting spaces|pass\b.*looks for/);
  });

  it('names what stops it beside its station after a run, and nowhere without one', () => {
    const said = (results?: Seen): string =>
      textsOf(mapLayout(demo.scenario, demo.route, FORMS.screen, results).groups)
        .map(({ text }) => text)
        .join(' ');
    expect(said(demoResults).match(/stops it/g)).toHaveLength(2);
    expect(said()).not.toContain('stops it');
  });
});
