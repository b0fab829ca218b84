import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
const FEW = ['--replications', '4', '--sure', '40 %', '--weeks', '10', '--settle', '2', '--workers', '1'];

// Each test starts the program, on a machine that may be busy.
describe('rateproof rate', { timeout: 60_000 }, () => {
  it('finds the four a day of a bench with 8 h a day and 2 h a unit, and writes its folder', async () => {
    const { code, stdout, stderr } = await runHere(
      folder,
      'rate',
      'slack.yaml',
      '--from',
      '3',
      '--to',
      '5',
      '--step',
      '0.5',
      ...FEW,
      '--out',
      'rate',
    );
    expect(code).toBe(0);
    expect(stdout).toMatch(/^In full: 4 a day is the highest rate that holds: 4 of 4 builds keep up/m);
    expect(stdout).toContain('Arithmetic allows 4 a day (bench)');
    expect(stderr).toBe(
      'looking for the highest rate from 3 to 5 a day that slack.yaml holds, 4 replications a rate, seed 1\ndrawing the report\nreport: rate\n',
    );
    expect(readdirSync(join(folder, 'rate')).sort()).toEqual([
      '01-throughput-against-rate.png',
      '02-wip-and-lead-time-against-rate.png',
      '04-losses.png',
      '05-trials.png',
      'losses.csv',
      'map.png',
      'map.svg',
      'rates.csv',
      'report.html',
      'report.xlsx',
      'results.json',
      'trials.csv',
    ]);
    expect(JSON.parse(readFileSync(join(folder, 'rate/results.json'), 'utf8'))).toMatchObject({
      format: 'rateproof results',
      study: 'rate',
      answer: { highestPerDay: 4, abovePerDay: 4.5 },
    });
  });

  it('exits with 3 where the plan asks for more than holds, and with 0 for --finding-ok', async () => {
    const ask = ['rate', 'tight.yaml', '--from', '3', '--to', '6', '--step', '1', ...FEW, '--quiet'];
    const strict = await runHere(folder, ...ask),
      lenient = await runHere(folder, ...ask, '--finding-ok');
    expect([strict.code, lenient.code]).toEqual([3, 0]);
    expect(strict.stdout).toContain('The plan asks for 6');
  });

  it.each([
    ['no rate', ['slack.yaml'], 'expected --from with a rate, got none'],
    [
      'rates the wrong way round',
      ['slack.yaml', '--from', '5', '--to', '3'],
      '--to: expected a rate of at least --from 5, got 3',
    ],
    [
      'a rate that is none',
      ['slack.yaml', '--from', 'two', '--to', '3'],
      '--from: expected a number above 0 and at most 10,000, got "two"',
    ],
    [
      'too fine a step',
      ['slack.yaml', '--from', '1', '--to', '3', '--step', '0.001'],
      '--step: expected at most 1,000 rates, got 2,001',
    ],
    [
      'a unit that is none',
      ['slack.yaml', '--from', '3', '--to', '5', '--per', 'month'],
      '--per: expected day or week, got "month"',
    ],
    [
      'too fine a step, where none is asked',
      ['slack.yaml', '--from', '1', '--to', '3000', '--per', 'day'],
      '--step: expected at most 1,000 rates, got 29,991',
    ],
    [
      'a share that is none',
      ['slack.yaml', '--from', '3', '--to', '5', '--sure', '120 %'],
      '--sure: expected per cent from 1 to 99, got "120 %"',
    ],
    [
      'a scenario with arrivals',
      ['endless.yaml', '--from', '3', '--to', '5'],
      'endless.yaml:2:1 programme: expected one with a `rate`, got one with `arrivals`, whose units come by chance',
    ],
    [
      'a window of too few units',
      ['slack.yaml', '--from', '0.1', '--to', '5', ...FEW],
      'slack.yaml:2:1 programme: expected at least 50 units in a window of 10 weeks at 0.1 a day, got 5',
    ],
  ])('refuses %s', async (_, args, message) => {
    const { code, stdout, stderr } = await runHere(folder, 'rate', ...args, '--quiet');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(`error: ${message}`);
  });
});
