import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CompareResults } from '../../../src/study/compare/results.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import type { Results as SimulateResults } from '../../../src/study/simulate/results.js';
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
    // The first of the two brings nothing by itself.
    const words = stdout.replaceAll(/\s+/g, ' ');
    expect(words).toContain('Every cheaper set falls short, if no change does harm.');
    expect(words).toContain(
      '“second bench” was not seen to bring more at its step, but without it the others',
    );
    expect(words).toContain('; 4 simulated builds are too few to say how far chance moves that.');
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
      'plan-reached.yaml',
      'report.html',
      'report.xlsx',
      'results.json',
      'steps-reached.yaml',
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

  it('writes a plan that simulate runs, and a way that compare runs step by step, to the same rates', async () => {
    const asked = ['--replications', '20', '--quiet', '--json', '--finding-ok'];
    await runHere(folder, 'reach', 'short.yaml', '--replications', '12', '--quiet', '--out', 'kept');
    const kept = (name: string): string => readFileSync(join(folder, 'kept', name), 'utf8'),
      { steps } = JSON.parse(kept('results.json')) as ReachResults;
    for (const name of ['plan-reached.yaml', 'steps-reached.yaml'])
      writeFileSync(join(folder, name), kept(name));
    const plan = await runHere(folder, 'simulate', 'plan-reached.yaml', ...asked, '--seed', 'another'),
      way = await runHere(
        folder,
        'compare',
        'short.yaml',
        'steps-reached.yaml',
        ...asked,
        '--seed',
        'another',
      );
    expect([plan.code, way.code]).toEqual([0, 0]);
    const { answer } = JSON.parse(plan.stdout) as SimulateResults,
      { whatIfs } = JSON.parse(way.stdout) as CompareResults,
      last = steps.at(-1)!;
    expect(answer.verdict).toBe('holds');
    // Two independent estimates of one rate are further apart than both intervals together once in thousands.
    const half = ({ low, high }: { low: number | null; high: number | null }): number => (high! - low!) / 2;
    expect(Math.abs(answer.held!.mean - last.throughput.mean)).toBeLessThanOrEqual(
      half(answer.held!) + half(last.throughput),
    );
    expect(whatIfs.map(({ name }) => name)).toEqual(
      steps.flatMap(({ made }, i) => (made === null ? [] : [`${i}: ${made.name}`])),
    );
  });

  it('says in the plan which rate it was found for, where that is another, and the what-ifs ask for it', async () => {
    const short = readFileSync(join(folder, 'short.yaml'), 'utf8');
    writeFileSync(join(folder, 'long.yaml'), short.replace('quantity: 60', 'quantity: 140'));
    await runHere(
      folder,
      ...[
        'reach',
        'long.yaml',
        '--rate',
        '7',
        '--replications',
        '4',
        '--quiet',
        '--out',
        'seven',
        '--finding-ok',
      ],
    );
    const read = (name: string): string => readFileSync(join(folder, 'seven', name), 'utf8');
    expect(read('plan-reached.yaml')).toContain(
      '# It was found for 7 a day: set programme.rate of long.yaml to\n# [{"from":"2027-03-01","per day":7}]\n',
    );
    writeFileSync(join(folder, 'seven.yaml'), read('steps-reached.yaml'));
    const { code, stdout } = await runHere(
      folder,
      ...['compare', 'short.yaml', 'seven.yaml', '--replications', '2', '--quiet', '--json', '--finding-ok'],
    );
    expect(code).toBe(0);
    const { whatIfs } = JSON.parse(stdout) as CompareResults;
    expect(whatIfs[0].changes.map(({ path }) => path)).toContain('programme.rate');
  });
});
