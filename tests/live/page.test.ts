import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runHere } from '../cli/run-here.js';
import { BROWSERS, pagesIn, SIZES } from './browsers.js';

const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url)),
  AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const folder = mkdtempSync(join(tmpdir(), 'rateproof-live-'));
const starter = join(SCENARIOS, 'starter.yaml'),
  demo = join(SCENARIOS, 'rescue-tender.yaml');

/** Names that would do harm where they were taken for more than names, and one as long as may be. */
const HOSTILE = [
  '<script>alert(1)</script>',
  `"'><img src=x onerror=alert(2)>`,
  'שלום',
  'x'.repeat(76),
  '=1+1',
];
writeFileSync(
  join(folder, 'hostile.yaml'),
  `scenario: ${JSON.stringify(HOSTILE[0])}
programme: { start: 2027-03-01, quantity: 30, rate: { per day: 4 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  works:
    calendar: days
    stations:
${HOSTILE.map((name) => `      ${JSON.stringify(name)}: { buffer: 2 }`).join('\n')}
route:
${HOSTILE.map((name, i) => `  - { step: ${JSON.stringify(`${name} ${i}`)}, at: ${JSON.stringify(name)}, work: { mean: 90 min, cv: 0.3 } }`).join('\n')}
`,
);
writeFileSync(
  join(folder, 'what-ifs.yaml'),
  'third bay: { changes: { sites.workshop.stations.fitting bay.places: 3 } }\n',
);

writeFileSync(
  join(folder, 'factors.yaml'),
  'factors:\n  bays: { change: sites.workshop.stations.fitting bay.places, levels: [2, 3] }\n' +
    '  spread: { scale: spread, levels: [1, 1.5] }\n',
);

// Two of three named changes are needed for five a day.
writeFileSync(
  join(folder, 'priced.yaml'),
  `${readFileSync(starter, 'utf8')}
costs:
  currency: EUR
  people: { default: 45 }
  changes:
    second frame bench: { relief: place, of: frame bench, price: 12000, ready after: 6 weeks, at most: 1 }
    another fitting bay: { relief: place, of: fitting bay, price: 20000, ready after: 3 months }
    another fitter: { relief: person, of: fitters, price: 1500, ready after: 4 weeks, at most: 2 }
`,
);

// The starter with due days, and a floor on which fitting out takes longer; the hostile one as it is.
const due = readFileSync(starter, 'utf8').replace('quantity: 100', 'quantity: 100\n  due after: 30 h');
writeFileSync(join(folder, 'due.yaml'), due);
writeFileSync(join(folder, 'slow.yaml'), due.replace('mean: 3 h', 'mean: 3.5 h'));
const LOGS = ['slow', 'hostile'];
// Invented times of the starter's steps, of others, and of one with a name that would do harm, in twelve steps.
writeFileSync(
  join(folder, 'times.csv'),
  `step,minutes,model\n${[
    'build frame',
    'fit out',
    'test',
    ...Array.from({ length: 8 }, (_, i) => `more ${i}`),
  ]
    .flatMap((step, s) =>
      [0.7, 0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.2, 1.3, 1.4, 1.6].map(
        (part, i) => `${step},${(part * (40 + 20 * s)).toFixed(1)},${i % 2 === 0 ? 'a' : 'b'}`,
      ),
    )
    .join('\n')}\n"<script>alert(3)</script>",5,a\n`,
);

const FEW = ['--replications', '4', '--finding-ok', '--quiet'];
const PAGES: Readonly<Record<string, readonly string[]>> = {
  demo: ['simulate', demo, ...FEW],
  simulate: ['simulate', starter, ...FEW],
  compare: ['compare', starter, 'what-ifs.yaml', ...FEW],
  factors: ['factors', starter, 'factors.yaml', ...FEW],
  rate: ['rate', starter, '--from', '3', '--to', '5', '--step', '0.5', '--weeks', '8', ...FEW],
  reliefs: ['reliefs', starter, ...FEW],
  buffers: ['buffers', starter, '--budget', '3', ...FEW],
  reach: ['reach', 'priced.yaml', '--rate', '5', ...FEW],
  validate: ['validate', 'due.yaml', 'slow.csv', '--replications', '10', '--finding-ok', '--quiet'],
  forecast: ['forecast', 'due.yaml', 'slow.csv', '--at', '2027-03-15', ...FEW],
  fit: ['fit', 'times.csv', '--by', 'model', '--quiet'],
  hostile: ['simulate', 'hostile.yaml', ...FEW],
  'hostile-log': [
    'validate',
    'hostile.yaml',
    'hostile.csv',
    '--replications',
    '10',
    '--finding-ok',
    '--quiet',
  ],
  'hostile-ahead': ['forecast', 'hostile.yaml', 'hostile.csv', '--at', '2027-03-04', ...FEW],
};
/** One of each study, with names as people give them. */
const OF_STUDIES = Object.keys(PAGES).filter((name) => name !== 'simulate' && !name.startsWith('hostile'));
/** They run nothing, or build after build on one thread. */
const workersOf = (name: string): string[] =>
  ['fit', 'validate', 'forecast', 'hostile-log', 'hostile-ahead'].includes(name) ? [] : ['--workers', '1'];
const pageOf = (name: string): string => join(folder, name, 'report.html');

beforeAll(async () => {
  for (const name of LOGS) {
    const { code, stderr } = await runHere(
      folder,
      'simulate',
      `${name}.yaml`,
      ...FEW,
      '--trace',
      `${name}.csv`,
    );
    expect({ name, code, stderr }).toEqual({ name, code: 0, stderr: '' });
  }
  // Side by side: each starts, reads and draws in one thread for most of its time.
  await Promise.all(
    Object.entries(PAGES).map(async ([name, args]) => {
      const { code, stderr } = await runHere(folder, ...args, ...workersOf(name), '--out', name);
      expect({ name, code, stderr }).toEqual({ name, code: 0, stderr: '' });
    }),
  );
}, 180_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

it('is under 3 MB, also for 53 stations', () => {
  for (const name of Object.keys(PAGES)) expect(statSync(pageOf(name)).size, name).toBeLessThan(3e6);
});

describe.each(BROWSERS)('a report in %s', { timeout: 120_000 }, (kind, path) => {
  const open = pagesIn(kind, path);

  describe.each(SIZES)('at $width by $height', (size) => {
    it.each(Object.keys(PAGES))(
      'of %s draws every picture, complains of nothing, asks the network for nothing, and fits the screen',
      async (name) => {
        const { page, faults } = await open(pageOf(name), size);
        const seen = await page.evaluate(() => ({
          pictures: document.querySelectorAll('figure').length,
          drawn: [...document.querySelectorAll('.ground canvas')].filter((each) => each.clientHeight > 60)
            .length,
          wide: document.documentElement.scrollWidth,
          answer: document.querySelector('h1')?.getBoundingClientRect().bottom ?? NaN,
          rests: document.querySelector('.first dl')?.getBoundingClientRect().bottom ?? NaN,
        }));
        expect(faults).toEqual([]);
        expect(seen.pictures).toBeGreaterThan(0);
        expect(seen.drawn).toBe(seen.pictures);
        expect(seen.wide).toBeLessThanOrEqual(size.width);
        // A long name takes its room.
        if (name.startsWith('hostile')) return;
        expect(seen.answer).toBeLessThan(size.height / 3);
        expect(seen.rests).toBeLessThan(size.height);
        await page.close();
      },
    );
  });

  it('tells the values of a place by the arrow keys, and switches a series off', async () => {
    const { page } = await open(pageOf('simulate'), SIZES[0]);
    await page.focus('figure .ground');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    const said = (): Promise<string> => page.$eval('figure .said', (each) => each.textContent);
    expect(await said()).toMatch(/^2027-W\d\d\. shipped: [\d.]+.*asked: 4/);
    await page.click('figure .keys button');
    await page.focus('figure .ground');
    await page.keyboard.press('ArrowRight');
    expect(await said()).not.toContain('shipped:');
    await page.close();
  });

  it('has the numbers of a picture in a table, as many as there are weeks', async () => {
    const { page } = await open(pageOf('simulate'), SIZES[1]);
    await page.click('figure .numbers summary');
    await setTimeout(300);
    const rows = await page.$$eval('figure .numbers tbody tr', (all) => all.map((row) => row.textContent));
    const { series } = JSON.parse(readFileSync(join(folder, 'simulate/results.json'), 'utf8')) as {
      series: { labels: string[] };
    };
    expect(rows).toHaveLength(series.labels.length);
    expect(rows[1]).toMatch(/^2027-W\d\d\d/);
    await page.close();
  });

  it('copies a table with tabs and saves it as CSV by keys alone, numbers bare and no formula, and says so', async () => {
    const { page } = await open(pageOf('hostile'), SIZES[0]);
    await page.evaluate(() => {
      const taken: string[] = [];
      Object.assign(window, { taken });
      Object.defineProperty(navigator, 'clipboard', {
        value: {
          writeText: (text: string) => {
            taken.push(text);
            return Promise.resolve();
          },
        },
      });
      URL.createObjectURL = (blob) => {
        void (blob as Blob).text().then((text) => taken.push(text));
        return '#';
      };
    });
    const press = async (button: number): Promise<string> => {
      await page.focus(`#stations .tools button:nth-of-type(${button})`);
      await page.keyboard.press('Enter');
      await setTimeout(200);
      return page.$eval('#stations [role="status"]', (each) => each.textContent);
    };
    await page.focus('#stations summary');
    await page.keyboard.press('Enter');
    expect(await press(1)).toBe('copied');
    expect(await press(2)).toBe('saved as table-stations.csv');
    const [tabs = '', commas = ''] = await page.evaluate(
      () => (window as unknown as { taken: string[] }).taken,
    );
    expect(tabs.split('\n')[0]).toMatch(/^Station\tSite\tPlaces\t/);
    expect(tabs).toMatch(/^'=1\+1\tworks\t1\t0\.\d+\t/m);
    expect(commas.split('\n')[0]).toMatch(/^Station,Site,Places,/);
    expect(commas).toContain(`"""'><img src=x onerror=alert(2)>",works,1,`);
    await page.close();
  });

  it('copies the numbers of a picture, and by a marked text where the clipboard is closed', async () => {
    const { page } = await open(pageOf('simulate'), SIZES[0]);
    await page.evaluate(() => {
      Object.defineProperty(navigator, 'clipboard', {
        value: { writeText: () => Promise.reject(new Error('closed')) },
      });
      const execCommand = (): boolean => {
        Object.assign(window, { taken: (document.activeElement as HTMLTextAreaElement).value });
        return true;
      };
      Object.assign(document, { execCommand });
    });
    await page.click('figure .numbers summary');
    await setTimeout(300);
    await page.click('figure .numbers .tools button');
    await setTimeout(200);
    expect(await page.$eval('figure [role="status"]', (each) => each.textContent)).toBe('copied');
    const taken = await page.evaluate(() => (window as unknown as { taken: string }).taken);
    expect(taken.split('\n')[0]).toMatch(/\tshipped\t.*\tasked/);
    expect(taken.split('\n')[2]).toMatch(/^2027-W\d\d\t[\d.]+\t/);
    await page.close();
  });

  it('has its contents at the side on a wide screen, where they stay, and in a fold on a phone', async () => {
    for (const [size, side, fold] of [
      [SIZES[0], true, false],
      [SIZES[1], false, true],
    ] as const) {
      const { page } = await open(pageOf('demo'), size);
      await page.evaluate(() => {
        window.scrollTo(0, 3000);
      });
      const seen = await page.evaluate(() =>
        ['nav.side', 'nav.folded'].map((name) => {
          const { width, top } = document.querySelector(name)!.getBoundingClientRect();
          return { isShown: width > 0, top };
        }),
      );
      expect(seen.map(({ isShown }) => isShown)).toEqual([side, fold]);
      if (side) expect(seen[0]?.top).toBeLessThan(40);
      expect(await page.$eval('nav.folded details', (each) => each.open)).toBe(false);
      // How a picture is drawn stands below it, and leaves the line under its title alone.
      const [told] =
        /(?<=<figcaption>.*?<p class="soft">)[^<]+/s.exec(readFileSync(pageOf('demo'), 'utf8')) ?? [];
      expect(await page.$eval('figcaption .soft', (each) => each.textContent)).toBe(told);
      const text = await page.$eval('section:not(.first) li', (each) => each.clientWidth);
      expect(text).toBeLessThanOrEqual(576);
      await page.close();
    }
  });

  it('has the numbers of a picture of points too, in words that say of what, by keys as well', async () => {
    const { page } = await open(pageOf('rate'), SIZES[1]);
    await page.click('figure .numbers summary');
    await setTimeout(300);
    const rows = await page.$$eval('figure .numbers tbody tr', (all) => all.map((row) => row.textContent));
    const { points } = JSON.parse(readFileSync(join(folder, 'rate/results.json'), 'utf8')) as {
      points: unknown[];
    };
    expect(rows).toHaveLength(points.length);
    expect(rows[0]).toMatch(/^rate asked, units a working day 3/);
    await page.focus('figure .ground');
    await page.keyboard.press('ArrowRight');
    expect(await page.$eval('figure .said', (each) => each.textContent)).toMatch(
      /^rate asked, units a working day \d.*\. (holds|does not hold|not settled): \d/,
    );
    await page.close();
  });

  it('shows all rows of a long picture at a click', async () => {
    const { page } = await open(pageOf('demo'), SIZES[1]);
    const height = (): Promise<number> =>
      page.$eval('[data-picture="06-buffers"] canvas', (each) => each.clientHeight);
    const few = await height();
    await page.click('[data-picture="06-buffers"] .more');
    expect(await height()).toBeGreaterThan(2 * few);
    await page.close();
  });

  it.runIf(kind === 'chrome').each([...OF_STUDIES, ...['hostile', 'hostile-log', 'hostile-ahead']])(
    'of %s has no violation of WCAG 2.2 AA that axe-core finds, light or dark',
    async (name) => {
      const { page } = await open(pageOf(name), SIZES[1]);
      await page.evaluate(readFileSync(AXE, 'utf8'));
      for (const value of ['light', 'dark']) {
        await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value }]);
        const violations = await page.evaluate(async () => {
          const { axe } = window as unknown as {
            axe: {
              run: (options: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
            };
          };
          const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
          const { violations: found } = await axe.run({ runOnly: { type: 'tag', values: tags } });
          return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
        });
        expect(violations).toEqual([]);
      }
      await page.close();
    },
  );

  it.runIf(kind === 'chrome').each(OF_STUDIES)(
    'of %s has all of its first screen on the first page of A4 and Letter, and links written out',
    async (name) => {
      const { page } = await open(pageOf(name), SIZES[0]),
        px = 96 / 25.4;
      await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
      await page.emulateMediaType('print');
      for (const [width, height] of [
        [210, 297],
        [215.9, 279.4],
      ] as const) {
        await page.setViewport({ width: Math.floor((width - 26) * px), height: 1000 });
        const first = await page.$eval('.first', (each) => each.getBoundingClientRect().bottom);
        expect(first).toBeLessThan((height - 26) * px);
      }
      const written = await page.$eval('.besides a', (each) => getComputedStyle(each, '::after').content);
      expect(written).toContain('on the next page');
      await page.close();
    },
  );

  it.runIf(kind === 'chrome').each([
    ['demo', 'a4'],
    ['demo', 'letter'],
    ['fit', 'letter'],
  ] as const)('of %s is printed on %s without a picture that is cut', async (name, format) => {
    const { page } = await open(pageOf(name), SIZES[0]);
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    await page.emulateMediaType('print');
    const room = format === 'a4' ? 297 - 26 : 279.4 - 26,
      width = format === 'a4' ? 210 - 26 : 215.9 - 26,
      px = 96 / 25.4;
    await page.setViewport({ width: Math.floor(width * px), height: Math.floor(room * px) });
    const heights = await page.$$eval('figure', (all) =>
      all.map((each) => each.getBoundingClientRect().height),
    );
    for (const height of heights) expect(height).toBeLessThan(room * px);
    expect((await page.pdf({ format })).length).toBeGreaterThan(50_000);
    await page.close();
  });
});
