import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ReachResults } from '../../../src/study/reach/results.js';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
// Invented. Two stations of 2 h work in 8 h days can do 4 a day each; 6 are asked. Both have to be doubled, and
// a bundle does it for one of them without a price.
writeFileSync(
  join(folder, 'short.yaml'),
  `scenario: short of two
programme: { start: 2027-03-01, quantity: 60, rate: { per day: 6 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  hall:
    zone: Europe/Berlin
    calendar: days
    stations: { bench: { buffer: unlimited }, stand: { buffer: unlimited } }
costs:
  currency: EUR
  unit: { day: 1 }
  changes:
    second bench: { relief: place, of: bench, price: 2000, ready after: 2 weeks, at most: 1 }
    second stand: { relief: place, of: stand, price: 500, at most: 1 }
    quick stand: { changes: [{ scale: { times: 0.5, of: test } }] }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.1 } }
  - { step: test, at: stand, work: { mean: 2 h, cv: 0.1 } }
`,
);

describe('rateproof reach', { timeout: 60_000 }, () => {
  it('says what to buy in words of the first screen, and writes all of it into a folder with a map', async () => {
    const { code, stdout } = await runHere(
      folder,
      ...['reach', 'short.yaml', '--replications', '4', '--quiet', '--out', 'report'],
    );
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Yes, for 2,500 EUR: two changes\.\n/);
    expect(stdout).toContain('Every cheaper set falls short, if no change does harm.');
    // The first of the two brings nothing by itself.
    const words = stdout.replaceAll(/\s+/g, ' ');
    expect(words).toContain(
      '“second bench” was not seen to bring more at its step, but without it the others',
    );
    expect(words).toContain('(4 simulated builds are too few to say how far chance moves that)');
    expect(readdirSync(join(folder, 'report')).sort()).toEqual([
      '01-steps.png',
      '02-most-for-each-sum.png',
      '04-losses.png',
      '05-trials.png',
      'changes.csv',
      'frontier.csv',
      'losses.csv',
      'map.png',
      'map.svg',
      'report.html',
      'report.xlsx',
      'results.json',
      'steps.csv',
      'trials.csv',
    ]);
    const { possible, unpriced } = JSON.parse(
      readFileSync(join(folder, 'report/results.json'), 'utf8'),
    ) as ReachResults;
    // What each touches, so that a map can point at it.
    expect(possible.map(({ things }) => things)).toEqual([
      [{ kind: 'station', name: 'bench', site: 'hall' }],
      [{ kind: 'station', name: 'stand', site: 'hall' }],
      [{ kind: 'step', name: 'test', site: 'hall' }],
    ]);
    expect(unpriced).toMatchObject([{ names: ['quick stand'], money: 2000, worth: 500 }]);
    expect(readFileSync(join(folder, 'report/map.svg'), 'utf8')).toContain('step 1');
  });
});
