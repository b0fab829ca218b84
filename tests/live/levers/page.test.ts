import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';
import { runHere } from '../../cli/run-here.js';
import { BROWSERS, pagesIn, SIZES } from '../browsers.js';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  folder = mkdtempSync(join(tmpdir(), 'rateproof-levers-'));

/** Every kind of distribution, learning, options, a lane, failures, sent back units, a build list; invented. */
const KINDS = [
  '{ low: 35 min, likely: 42 min, high: 60 min }',
  '{ triangular: { low: 35 min, likely: 42 min, high: 60 min } }',
  '{ low: 20 min, high: 50 min }',
  '{ erlang: { mean: 40 min, phases: 3 } }',
  '{ gamma: { mean: 42 min, cv: 0.3 } }',
  '{ lognormal: { mean: 42 min, cv: 0.3 } }',
  '{ weibull: { mean: 42 min, cv: 0.5 } }',
  '{ normal: { mean: 42 min, sd: 8 min, low: 20 min, high: 70 min } }',
  '{ discrete: { 10 min: 20 %, 50 min: 80 % } }',
  '{ observed: times.csv, column: minutes, unit: min }',
];
writeFileSync(join(folder, 'times.csv'), 'minutes\n31\n44.5\n52\n');
writeFileSync(join(folder, 'orders.csv'), 'build,colour\nA1,red\nA2,"white"\n');
const HOSTILE = `places "at" <b>, & 'so'`;
writeFileSync(
  join(folder, 'line.yaml'),
  `scenario: Every kind
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 9 }, options: { colour: { red: 60 %, white: 40 % } }, build list: orders.csv }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
costs: { currency: EUR, people: { default: 40 } }
sites:
  works:
    calendar: days
    crews: { hands: { headcount: 14, absence: 5 % } }
    stations:
${KINDS.map((_, i) => `      s${i}: { buffer: 2${i === 3 ? ', places: 1, failures: { every: { exponential: { mean: 20 h } }, repair: { low: 10 min, high: 90 min } }' : ''} }`).join('\n')}
  far: { calendar: days, stations: { end: { buffer: 2 } } }
lanes: { road: { from: works, to: far, trucks: 2, capacity: 1, drive: { low: 20 min, high: 40 min } } }
defects: { flaw: {} }
route:
${KINDS.map((work, i) => `  - { step: w${i}, at: s${i}, crew: { hands: 1 }, work: ${work}${i === 5 ? ', learning: { rate: 90 % }' : ''}${i === 2 ? ', creates: { flaw: 20 % }' : ''}${i === 4 ? ', finds: { flaw: { chance: 90 %, back to: w2, limit: 2 } }' : ''} }`).join('\n')}
  - lane: road
  - { step: last, at: end, work: { exponential: { mean: 20 min } } }
levers:
  asked a day: { change: programme.rate.per day, from: 4, to: 12, step: 0.5 }
  ${JSON.stringify(HOSTILE)}: { change: sites.works.stations.s3.places, from: 1, to: 3, price: 1000 }
`,
);

const page = (): string => join(folder, 'out', 'report.html'),
  report = (): Results => JSON.parse(readFileSync(join(folder, 'out', 'results.json'), 'utf8')) as Results;
beforeAll(async () => {
  const { code, stderr } = await runHere(
    folder,
    ...['simulate', 'line.yaml', '--replications', '6', '--finding-ok', '--quiet', '--out', 'out'],
  );
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
}, 60_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

it('a page with levers is under 3 MB; one without carries neither scenario nor engine', async () => {
  expect(statSync(page()).size).toBeLessThan(3e6);
  writeFileSync(
    join(folder, 'bare.yaml'),
    readFileSync(join(folder, 'line.yaml'), 'utf8').split('levers:')[0] ?? '',
  );
  await runHere(
    folder,
    ...['simulate', 'bare.yaml', '--replications', '2', '--finding-ok', '--quiet', '--out', 'bare'],
  );
  const bare = readFileSync(join(folder, 'bare', 'report.html'), 'utf8');
  expect(bare).not.toContain('id="engine"');
  expect(bare).not.toContain('try-it"');
});

/** Keeps what the engine says, so that it can be read here. */
const LISTEN = `
window.heard = [];
const Own = window.Worker;
window.Worker = class extends Own {
  constructor(...given) {
    super(...given);
    window.engine = this;
    this.addEventListener('message', ({ data }) => window.heard.push(data));
  }
};`;
type Heard = { kind: string; id: number; done: number; same: number; results: Results; rows: unknown[] };

async function until<Value>(ask: () => Promise<Value | undefined>): Promise<Value> {
  for (let tries = 0; tries < 400; tries++) {
    const value = await ask();
    if (value != null) return value;
    await setTimeout(50);
  }
  throw new Error('waited in vain');
}
/** As text: the wire to Firefox leaves out an object that stands in another twice. */
const heard = async (of: Page, kind: string, id?: number): Promise<Heard> =>
  JSON.parse(
    await until(
      () =>
        of.evaluate(
          (wanted, one) => {
            const { heard } = window as unknown as { heard: Heard[] };
            return JSON.stringify(
              heard.findLast((each) => each.kind === wanted && (one ?? each.id) === each.id),
            );
          },
          kind,
          id,
        ) as Promise<string | undefined>,
    ),
  ) as Heard;
const outcome = (of: Page): Promise<string> => of.$eval('#try-it .outcome', (each) => each.textContent);

describe.each(BROWSERS)('levers in %s', { timeout: 60_000 }, (kind, path) => {
  const open = pagesIn(kind, path);
  const opened = (size: (typeof SIZES)[number], address = '') => open(page() + address, size, LISTEN);

  it('untouched give the report, bit for bit, and moved ones the page of `simulate` of the changed file', async () => {
    const { page: at, faults } = await opened(SIZES[0]);
    await at.click('.lever:nth-child(2) button:last-of-type');
    const { results: moved } = await heard(at, 'results', 1);
    writeFileSync(
      join(folder, 'moved.yaml'),
      readFileSync(join(folder, 'line.yaml'), 'utf8').replace('buffer: 2, places: 1', 'buffer: 2, places: 2'),
    );
    const simulated = (file: string): Promise<Results> => {
      const { scenario } = readScenario(readFileSync(join(folder, file), 'utf8'), file, (name) =>
        readFileSync(join(folder, name), 'utf8'),
      );
      if (scenario === undefined) throw new Error(`${file}: expected a sound scenario`);
      return simulateStudy({ scenario, file, seed: report().seed, replications: 6, workers: 1 });
    };
    expect(bare(moved)).toEqual(bare(await simulated('moved.yaml')));
    await at.evaluate(() => {
      const { engine } = window as unknown as { engine: Worker };
      engine.postMessage({ kind: 'try', id: 99, numbers: [9, 1] });
    });
    const { results: same } = await heard(at, 'results', 99);
    expect(bare(same)).toEqual(bare(await simulated('line.yaml')));
    expect(await heard(at, 'agrees')).toEqual({ kind: 'agrees', done: 6, same: 6 });
    expect(faults).toEqual([]);
    await at.close();
  });

  it('by keys alone: set, told, kept in the address and as lines, and taken back', async () => {
    const { page: at, faults } = await opened(SIZES[1]);
    await at.focus('.lever:nth-child(2) input');
    await at.keyboard.press('ArrowRight');
    await at.keyboard.press('Backspace');
    await at.keyboard.type('2');
    await heard(at, 'results');
    expect(await outcome(at)).toMatch(/ a day \(.*\), \+?-?[\d.]+ against the report|as in the report/);
    expect(await at.$eval('#try-it', (each) => each.textContent)).toContain('Once: 1,000 EUR');
    await at.focus('#try-it details summary');
    await at.keyboard.press('Enter');
    expect(await at.$eval('#try-it pre', (each) => each.textContent)).toContain(
      '- sites.works.stations.s3.places: 2',
    );
    const address = at.url();
    expect(new URL(address).hash).toMatch(/^#try&/);
    expect(await at.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    const { page: other } = await opened(SIZES[1], new URL(address).hash);
    expect(await other.$$eval('.lever input', (all) => all.map((each) => each.value))).toEqual(['9', '2']);
    await other.close();
    await at.focus('#try-it > button');
    await at.keyboard.press('Enter');
    expect(await outcome(at)).toBe('As in the report.');
    expect(new URL(at.url()).hash).toBe('');
    expect(faults).toEqual([]);
    await at.close();
  });

  it('refuse what cannot be, and say what nobody has looked at', async () => {
    const { page: at } = await opened(SIZES[0], '#try&asked+a+day=30');
    expect(await at.$eval('#try-it', (each) => each.textContent)).toContain(
      'Outside what the planner has looked at',
    );
    await at.evaluate(() => {
      window.location.hash = '#try&asked+a+day=-3';
    });
    await until(async () => ((await outcome(at)).startsWith('This cannot be.') ? true : undefined));
    await at.close();
  });

  if (kind === 'chrome')
    it('pass WCAG 2.2 AA while they are moved', async () => {
      const { page: at } = await opened(SIZES[0], '#try&asked+a+day=8');
      await heard(at, 'results', 1);
      await at.evaluate(readFileSync(AXE, 'utf8'));
      const found = await at.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run: (root: string, options: object) => Promise<{ violations: { id: string }[] }> };
        };
        const { violations } = await axe.run('#try-it', {
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
        });
        return violations.map(({ id }) => id);
      });
      expect(found).toEqual([]);
      await at.close();
    });
});

/** All bits of it, without what the page leaves out and what names the file. */
const bare = (results: Results): unknown =>
  JSON.parse(
    JSON.stringify({
      ...{ ...results, journey: null, recoveries: null },
      scenario: { ...results.scenario, file: '', digest: '' },
    }),
  );
