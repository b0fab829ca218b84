import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ReachResults } from '../../../src/study/reach/results.js';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
// Invented. One bench of 2 h work in 8 h days can do 4 a day; 5 are asked. A second bench does it, the jig too.
const PRICED = `scenario: short of a bench
programme: { start: 2027-03-01, quantity: 240, rate: { per day: 5 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  hall:
    zone: Europe/Berlin
    calendar: days
    stations: { bench: { places: 1, buffer: unlimited }, look: { places: 1, buffer: 2 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.1, basis: guess } }
  - { step: see, at: look, work: 10 min }
costs:
  currency: EUR
  changes:
    second bench: { relief: place, of: bench, price: 40000, ready after: 2 months, at most: 1 }
    jig: { changes: [{ route.build.work: { mean: 80 min, cv: 0.1 } }], price: 60000, ready after: 3 weeks }
    shelf: { relief: space, of: look, price: 10, at most: 2 }
`;
writeFileSync(join(folder, 'priced.yaml'), PRICED);
const ask = (...words: string[]) =>
  runHere(folder, 'reach', 'priced.yaml', '--replications', '6', '--workers', '1', ...words);

describe('rateproof reach', { timeout: 60_000 }, () => {
  it('says what to buy for the rate of the plan, and prints all of it as JSON', async () => {
    const { code, stdout } = await ask('--json', '--quiet'),
      found = JSON.parse(stdout) as ReachResults;
    expect(code).toBe(0);
    expect(found.goal).toEqual({ kind: 'rate', perDay: 5 });
    expect(found.outcome).toBe('reached');
    expect(found.steps.map(({ made, money }) => [made?.name ?? null, money])).toEqual([
      [null, 0],
      ['second bench', 40000],
    ]);
  });

  it('ends with 3 where nothing that may be bought will do', async () => {
    const poor = await ask('--json', '--budget', '39999', '--quiet'),
      found = JSON.parse(poor.stdout) as ReachResults;
    expect([poor.code, found.outcome, found.budget]).toEqual([3, 'not reached', 39999]);
    expect((await ask('--budget', '39999', '--quiet', '--finding-ok')).code).toBe(0);
    expect((await ask('--rate', '10', '--at-most', '1', '--quiet')).code).toBe(3);
  });

  it('gives the same to the last byte for any number of workers, and whatever stands in a comment', async () => {
    writeFileSync(join(folder, 'priced.yaml'), `# a remark\n${PRICED}`);
    const one = await ask('--json', '--quiet');
    writeFileSync(join(folder, 'priced.yaml'), PRICED);
    const three = await ask('--json', '--quiet', '--workers', '3');
    expect(three.stdout).toBe(one.stdout);
  });

  it.each<[string[], string]>([
    [['--rate', '0'], 'error: --rate: expected a number above 0 and at most 100,000, got "0"'],
    [['--date', '2027-02-30'], 'error: --date: expected a day such as 2028-03-01, got "2027-02-30"'],
    [['--date', '2027-04-30', '--rate', '5'], 'error: --date: expected no --rate beside it, got both'],
    [
      ['--by', '2027-04-01', '--date', '2027-04-30'],
      'error: --by: expected a rate to be held from that day on',
    ],
    [['--budget', '1e6'], 'error: --budget: expected an amount of money up to 1,000,000,000,000, got "1e6"'],
    [['--at-most', '0'], 'error: --at-most: expected a whole number from 1 to 100, got "0"'],
    [['--by', '2029-01-01'], 'programme: expected whole weeks at the rate asked'],
    [['--shard', '1/2'], 'error: '],
  ])('refuses %j in words', async (words, said) => {
    const { code, stdout, stderr } = await ask(...words);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain(said);
  });

  it('asks for changes where the scenario names none, and for a rate where it has none', async () => {
    const none = await runHere(folder, 'reach', 'slack.yaml'),
      saturated = PRICED.replace(
        /programme: .*/,
        'programme: { arrivals: saturated, length: 200 h }',
      ).replace('unlimited', '2');
    expect(none.code).toBe(2);
    expect(none.stderr).toContain('costs.changes: expected changes that could be made, got none');
    writeFileSync(join(folder, 'saturated.yaml'), saturated);
    const unasked = await runHere(folder, 'reach', 'saturated.yaml');
    expect([unasked.code, unasked.stderr]).toEqual([
      2,
      expect.stringContaining('--rate: expected the rate to be held, got none'),
    ]);
  });
});
