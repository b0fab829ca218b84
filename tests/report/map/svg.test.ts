import { describe, expect, it } from 'vitest';
import { FORMS, mapLayout } from '../../../src/report/map/layout.js';
import { mapPng } from '../../../src/report/map/png.js';
import { mapSvg } from '../../../src/report/map/svg.js';
import { faultsOf, type Mapped, mapped, mappedFile, SCENARIO_FILES, textsOf } from './looked.js';
import { parsed } from './parsed.js';

/** A plant, a feeder, a lane, a supply and a send-back, all of them called by one hostile name. */
const named = (name: string): Mapped => {
  const as = (what: string): string => JSON.stringify(`${what} ${name}`);
  return mapped(`
scenario: ${as('build')}
programme: { start: 2027-03-01, quantity: 5, rate: { per day: 2 }, options: { colour: { red: 50 %, white: 50 % } } }
sites:
  ${as('first')}: { zone: UTC, crews: { ${as('crew')}: 2 }, stations: { ${as('bench')}: { buffer: 3 }, ${as('side')}: {} } }
  ${as('second')}: { zone: UTC, stations: { ${as('gate')}: { places: 12 } } }
lanes:
  ${as('road')}: { from: ${as('first')}, to: ${as('second')}, trucks: 1, capacity: 1, load: 5 min, drive: 60 min, unload: 5 min, return: 60 min, leaves: when full }
defects: { ${as('flaw')}: {} }
supplies: { ${as('bolts')}: { site: ${as('first')}, at start: 2, deliveries: { lot: 9, every: 1 days } } }
feeders: { ${as('part')}: { stock: 2, route: [{ step: ${as('make')}, at: ${as('side')}, work: 5 min }] } }
route:
  - { step: ${as('do')}, at: ${as('bench')}, crew: { ${as('crew')}: 1 }, parts: { ${as('part')}: 1, ${as('bolts')}: 1 }, work: 9 min, creates: { ${as('flaw')}: 10 % } }
  - { step: ${as('look')}, at: ${as('bench')}, work: 2 min, finds: { ${as('flaw')}: { chance: 50 %, back to: ${as('do')} } } }
  - { lane: ${as('road')} }
  - { step: ${as('end')}, at: ${as('gate')}, work: 2 min }
`);
};

const HOSTILE: readonly (readonly [string, string])[] = [
  ['markup', '<script>alert(1)</script>'],
  ['quotes and ampersands', `"><img src=x onerror='a()'> & &amp; ]]>`],
  ['right-to-left letters', 'שלום עולם مرحبا'],
  ['as many letters as a name may have', 'x'.repeat(72)],
  ['as many words as a name may have', 'long word '.repeat(7).trim()],
  ['letters of many kinds', 'é 漢字 👩‍🚒 ﷽ \u200f ẍ̶'],
];

describe('the SVG of a map', () => {
  it.each(SCENARIO_FILES)('of %s is well-formed and tells its title and its route in words', (file) => {
    const { scenario, route } = mappedFile(file),
      drawing = mapLayout(scenario, route, FORMS.screen),
      found = parsed(mapSvg(drawing));
    expect(found.root).toMatchObject({ role: 'img', 'aria-labelledby': 'map-title map-words' });
    expect(found.texts.get('title')?.[0]).toContain(scenario.name);
    const words = found.texts.get('desc')?.[0] ?? '';
    for (const entry of route.main.entries)
      expect(words).toContain(entry.kind === 'stop' ? entry.station : entry.lane);
  });

  it('on paper is as large as the paper', () => {
    const { scenario, route } = mappedFile('scenarios/rescue-tender.yaml');
    expect(parsed(mapSvg(mapLayout(scenario, route, FORMS.paper))).root).toMatchObject({
      width: '210mm',
      height: expect.stringMatching(/^29[67]/) as string,
    });
  });

  it.each(HOSTILE)('of names with %s holds no element and no attribute of them', (_, name) => {
    const { scenario, route } = named(name);
    for (const form of Object.values(FORMS)) {
      const { elements, attributes } = parsed(mapSvg(mapLayout(scenario, route, form)));
      expect([...elements].sort()).toEqual(['desc', 'g', 'path', 'rect', 'svg', 'text', 'title']);
      expect([...attributes].filter((each) => /^on|href|style|src/.test(each))).toEqual([]);
    }
  });

  it.each(HOSTILE)('of names with %s has nothing over another, and keeps them whole in titles', (_, name) => {
    const { scenario, route } = named(name);
    for (const form of Object.values(FORMS)) {
      const drawing = mapLayout(scenario, route, form),
        titles = drawing.groups.map(({ about }) => about).join('\n');
      expect(faultsOf(drawing)).toEqual([]);
      for (const what of ['bench', 'side', 'gate', 'do', 'road', 'part', 'first', 'second'])
        expect(titles).toContain(`${what} ${name}`);
    }
  });

  it('isolates right-to-left names, by numbers that no terminal acts on', () => {
    const { scenario, route } = named('שלום'),
      svg = mapSvg(mapLayout(scenario, route, FORMS.screen));
    expect(svg).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    expect(parsed(svg).texts.get('text')?.join(' ')).toContain('\u2068שלום\u2069');
  });

  it('replaces what XML cannot hold', () => {
    const { scenario, route } = named('half \ud83d, no character \ufffe');
    expect(() => parsed(mapSvg(mapLayout(scenario, route, FORMS.screen)))).not.toThrow();
  });
});

describe('the PNG of a map', () => {
  it('is twice as large as its layout, and every text of it is told', async () => {
    const { scenario, route } = mappedFile('scenarios/starter.yaml'),
      drawing = mapLayout(scenario, route, FORMS.phone),
      texts: string[] = [],
      png = await mapPng(drawing, (text) => texts.push(text));
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([2 * drawing.width, 2 * drawing.height]);
    expect(texts).toEqual(textsOf(drawing.groups).map(({ text }) => text));
  });
});
