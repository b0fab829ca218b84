import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
// Invented. One bench of 2 h work in 8 h days can do 4 a day; 5 are asked. A second bench or overtime helps,
// a space does not.
writeFileSync(
  join(folder, 'short.yaml'),
  `scenario: short of a bench
programme: { start: 2027-03-01, quantity: 120, rate: { per day: 5 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  hall:
    zone: Europe/Berlin
    calendar: days
    stations: { bench: { places: 1, buffer: unlimited }, look: { places: 1, buffer: 2 } }
costs: { currency: EUR, buffer place: { day: 10 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.1, basis: guess } }
  - { step: see, at: look, work: { value: 10 min, basis: estimate } }
`,
);

describe('rateproof reliefs', { timeout: 60_000 }, () => {
  it('ranks what helps, says which number to measure next, and writes all of it into a folder', async () => {
    const { code, stdout } = await runHere(
      folder,
      'reliefs',
      'short.yaml',
      '--replications',
      '12',
      '--quiet',
      '--json',
      '--out',
      'report',
    );
    expect(code).toBe(0);
    const results = JSON.parse(stdout) as ReliefsResults,
      [best, ...others] = results.reliefs;
    expect(best.text).toBe('one place more at bench');
    // 4 a day become 5.
    expect(best.gain.mean).toBeGreaterThan(0.8);
    expect(best.gain.mean).toBeLessThan(1.2);
    expect(others.find(({ text }) => text === 'one space more ahead of look')!.gain.mean).toBe(0);
    expect(results.assumptions[0]).toMatchObject({
      path: 'route[0].work',
      words: 'the work of build',
      basis: 'guess',
      low: { value: '{ mean: 1.6 h, cv: 0.1 }' },
      high: { value: '{ mean: 2.4 h, cv: 0.1 }' },
    });
    expect(results.assumptions[0].low!.gain.mean).toBeGreaterThan(0.5);
    expect(results.assumptions[0].high!.gain.mean).toBeLessThan(-0.4);
    expect(results.answer.sentence).toMatch(
      /^The best single relief is one place more at bench: .* Measure next: the work of build \(guess/,
    );
    expect(results.runs.run).toBeLessThan(results.runs.withoutScreen);
    expect(readdirSync(join(folder, 'report')).sort()).toEqual([
      '01-reliefs.png',
      '02-measure-next.png',
      'assumptions.csv',
      'groups.csv',
      'map.png',
      'map.svg',
      'reliefs.csv',
      'report.html',
      'report.xlsx',
      'results.json',
    ]);
    expect(readFileSync(join(folder, 'report/results.json'), 'utf8')).toBe(stdout);
    expect(readFileSync(join(folder, 'report/reliefs.csv'), 'utf8').split('\n')[1]).toMatch(
      /^1,place,one place more at bench,/,
    );
  });

  it('gives the same to the last byte for any number of workers', async () => {
    const [one, three] = await Promise.all(
      ['1', '3'].map((workers) =>
        runHere(
          folder,
          'reliefs',
          'short.yaml',
          '--replications',
          '4',
          '--quiet',
          '--json',
          '--workers',
          workers,
        ),
      ),
    );
    expect(one.code).toBe(0);
    expect(three.stdout).toBe(one.stdout);
  });

  it('tries many reliefs in groups, each in one of them or by itself, whatever the number of workers', async () => {
    // Invented. The fifth of ten stations is the slow one.
    const stations = Array.from({ length: 10 }, (_, s) => s + 1);
    writeFileSync(
      join(folder, 'long.yaml'),
      `
scenario: long line
programme: { arrivals: saturated, length: 200 h, warm up: 50 h }
sites: { hall: { stations: { ${stations.map((s) => `s${s}: { buffer: 3 }`).join(', ')} } } }
route:
${stations.map((s) => `  - { step: w${s}, at: s${s}, work: { exponential: { mean: ${s === 5 ? 60 : 20} min } } }`).join('\n')}
`,
    );
    const [one, three] = await Promise.all(
      ['1', '3'].map((workers) =>
        runHere(
          folder,
          'reliefs',
          'long.yaml',
          '--replications',
          '10',
          '--quiet',
          '--json',
          '--workers',
          workers,
        ),
      ),
    );
    const { reliefs, groups, runs } = JSON.parse(one.stdout) as ReliefsResults,
      told = [...reliefs, ...groups.flatMap((group) => group.reliefs)].map(({ text }) => text);
    expect(three.stdout).toBe(one.stdout);
    // A place, a space and a tenth off the work of each; none is missing, none told twice.
    expect(new Set(told).size).toBe(30);
    expect(told).toHaveLength(30);
    expect(groups.length).toBeGreaterThan(0);
    expect(reliefs.slice(0, 2).map(({ text }) => text)).toEqual([
      'one place more at s5',
      '10 % off the work of w5',
    ]);
    expect(runs.run).toBeLessThan(runs.withoutScreen);
  });

  it('puts --rate in the place of the highest rate, and says so where it is held anyway', async () => {
    const { code, stdout } = await runHere(
      folder,
      'reliefs',
      'short.yaml',
      '--replications',
      '4',
      '--quiet',
      '--rate',
      '2',
    );
    expect(code).toBe(0);
    expect(stdout.replaceAll('\n', ' ')).toContain(
      '4 of 4 builds keep up with the 2 a day asked, so little can be gained; --rate asks for more.',
    );
  });

  it('varies what may bear most where a basis at the top marks everything, and says what it left', async () => {
    writeFileSync(
      join(folder, 'guessed.yaml'),
      `basis: guess\n${readFileSync(join(folder, 'short.yaml'), 'utf8').replace(', basis: guess', '').replace(', basis: estimate', '')}`,
    );
    const ask = (...more: string[]) =>
      runHere(folder, 'reliefs', 'guessed.yaml', '--replications', '2', ...more);
    const { code, stdout, stderr } = await ask('--values', '1');
    expect(code).toBe(0);
    // The bench is the constraint, and of one place it has none or two. Work, places and buffers of two stations and a price: 6 in all.
    expect(stdout).toMatch(
      /measure next +low: gain a day +high: gain a day\n.*\nthe number of places at bench .*\n\n/,
    );
    expect(stdout.replaceAll(/\n +/g, ' ')).toContain('1 of 6 guesses and estimates were varied');
    expect(stderr).toContain('and the 1 of 6 guesses and estimates that may bear most, low and high\n');
    const all = JSON.parse((await ask('--json', '--quiet')).stdout) as ReliefsResults;
    expect(all.values).toEqual({ most: 50, left: [] });
    expect(all.skipped.map(({ what }) => what)).toEqual([
      'the quantity',
      'the rate a day',
      // No place at all.
      'the number of places at bench, low end',
      'the number of places at look, low end',
    ]);
    const none = await ask('--values', 'all');
    expect(none.stderr).toContain('--values: expected a whole number from 0 to 10,000, got "all"');
  });

  it('refuses a rate that is none, or that has no place in the scenario', async () => {
    const zero = await runHere(folder, 'reliefs', 'short.yaml', '--rate', '0');
    expect(zero).toMatchObject({ code: 2, stdout: '' });
    expect(zero.stderr).toContain('--rate: expected a number above 0 and at most 100,000, got "0"');
    writeFileSync(
      join(folder, 'pulled.yaml'),
      readFileSync(join(folder, 'short.yaml'), 'utf8').replace(
        'start: 2027-03-01, quantity: 120, rate: { per day: 5 }',
        'start: 2027-03-01, arrivals: 2 h, quantity: 20',
      ),
    );
    const pulled = await runHere(folder, 'reliefs', 'pulled.yaml', '--rate', '3');
    expect(pulled).toMatchObject({ code: 2, stdout: '' });
    expect(pulled.stderr).toContain(
      '--rate: expected a scenario with a rate, got one with `arrivals`, whose units come by chance',
    );
  });

  it('refuses a change that is no relief of the scenario at its line, and says the price of one that is', async () => {
    const priced = (station: string): string =>
      readFileSync(join(folder, 'short.yaml'), 'utf8').replace(
        'EUR,',
        `EUR, changes: { a bench more: { relief: place, of: ${station}, price: 6000, ready after: 2 weeks } },`,
      );
    writeFileSync(join(folder, 'misspelt.yaml'), priced('bensh'));
    const refused = await runHere(folder, 'check', 'misspelt.yaml');
    expect(refused.code).toBe(2);
    expect(refused.stderr).toContain(
      'misspelt.yaml:9:71 costs.changes.a bench more.of: a name of which reliefs knows a place; got "bensh"; ' +
        'did you mean "bench"?',
    );
    writeFileSync(join(folder, 'priced.yaml'), priced('bench'));
    const { code, stdout } = await runHere(
      folder,
      'reliefs',
      'priced.yaml',
      '--replications',
      '2',
      '--quiet',
    );
    expect(code).toBe(0);
    // 6,000 over the 120 units of the programme.
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      'Price: 6,000 EUR, 50 a unit, ready 2 weeks after the order.',
    );
  });
});
