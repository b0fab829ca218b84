import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contents as contentsOf, rateproof, scenarioFolder } from '../run-cli.js';

const folder = scenarioFolder(),
  at = (name: string): string => join(folder, name);
// Invented. Random, with prices, and a level that none of the factors has alone.
writeFileSync(
  at('two.yaml'),
  `scenario: Two benches
programme: { start: 2027-03-01, quantity: 30, rate: { per day: 3 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: 2 }, trim bench: { buffer: 2 } } } }
costs: { currency: EUR, buffer place: { day: 10 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.5 } }
  - { step: trim, at: trim bench, work: { mean: 100 min, cv: 0.4 } }
`,
);
const FACTORS = `design: half
factors:
  benches: { change: sites.works.stations.bench.places, levels: [1, 2] }
  spread: { scale: spread, levels: [1, 2] }
  room: { levels: { little: [], much: [{ sites.works.stations.bench.buffer: 6 }, { sites.works.stations.trim bench.buffer: 6 }] } }
`;
writeFileSync(at('factors.yaml'), FACTORS);
writeFileSync(at('wrong.yaml'), FACTORS.replace('bench.places', 'bench.plces').replace('[1, 2]', '[1, 0]'));
const factors = (file: string, ...more: string[]) =>
  rateproof(folder, 'factors', 'two.yaml', file, '--replications', '4', '--workers', '1', ...more);

describe('factors', { timeout: 60_000 }, () => {
  it('prints the answer and writes its report, and its shards merged do the same, byte for byte', async () => {
    const one = await factors('factors.yaml', '--out', 'one', '--quiet');
    expect(one.code).toBe(0);
    expect(one.stdout).toMatch(/^In full: Four of 8 combinations of three factors were run: /m);
    for (const index of [2, 1])
      expect(await factors('factors.yaml', '--shard', `${index}/2`, '--out', `s${index}`)).toMatchObject({
        code: 0,
        stderr: `running 4 replications each of two.yaml and 4 combinations, seed 1, shard ${index} of 2\nshard ${index} of 2: s${index}\n`,
      });
    const merged = await rateproof(folder, 'merge', 's1', 's2', '--out', 'merged', '--quiet');
    expect(merged).toMatchObject({ code: 0, stdout: one.stdout });
    expect(contentsOf(at('merged'))).toEqual(contentsOf(at('one')));
    expect(readFileSync(at('one/effects.csv'), 'utf8')).toContain(
      'benches from 1 to 2,alone,benches,1,2,A,BC,',
    );
  });

  it('tells every mistake in its file with its line, and runs nothing', async () => {
    const { code, stderr, stdout } = await factors('wrong.yaml');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('wrong.yaml:3:65 benches: sites.works.stations.bench.plces: one of the keys');
    expect(stderr).toContain('docs/factors.md shows how changes are written');
  });
});
