import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rateproof, scenarioFolder, start } from '../run-cli.js';

const folder = scenarioFolder();

/** Milliseconds in which Ctrl-C is to be heard, with time for a busy machine. */
const HEARD = 2500;

/** A bench that fails a thousand times a second: one replication takes hours. Invented. */
const SWARM = `scenario: Swarm
programme: { start: 2027-03-01, quantity: 2000, rate: { per day: 4 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  works:
    zone: Europe/Oslo
    calendar: days
    stations:
      bench: { buffer: unlimited, failures: { every: 0.001 s, by: calendar time, repair: 0.001 s } }
route: [{ step: build, at: bench, work: 2 h }]
`;
writeFileSync(join(folder, 'swarm.yaml'), SWARM);
writeFileSync(
  join(folder, 'long.yaml'),
  SWARM.replace(/route:.*/, 'route:') +
    Array.from({ length: 20_000 }, (_, i) => `  - { step: s${i}, at: bench, work: 1 min }\n`).join(''),
);

describe('Ctrl-C while the work holds its thread', () => {
  it.each([
    ['in a replication of hours', 'running', ['simulate', 'swarm.yaml', '--workers', '1', '--out', 'swarm']],
    ['in a search', 'looking', ['rate', 'swarm.yaml', '--from', '3', '--to', '6', '--workers', '1']],
  ])('%s is heard, and nothing half written is left', async (_, told, args) => {
    const before = readdirSync(folder),
      running = start(folder, ...args);
    await running.told(told);
    const since = performance.now();
    running.interrupt();
    const { code, stdout, stderr } = await running.outcome;
    expect(performance.now() - since).toBeLessThan(HEARD);
    expect({ code, stdout }).toEqual({ code: 130, stdout: '' });
    expect(stderr).toMatch(/interrupted; no report was written\n$/);
    expect(readdirSync(folder).filter((name) => !before.includes(name) && name !== 'swarm.journal')).toEqual(
      [],
    );
  });

  it('in a long file is heard, before anything is said', async () => {
    const running = start(folder, 'check', 'long.yaml');
    setTimeout(() => {
      running.interrupt();
    }, 400);
    const since = performance.now();
    expect(await running.outcome).toEqual({
      code: 130,
      stdout: '',
      stderr: 'interrupted; no report was written\n',
    });
    expect(performance.now() - since).toBeLessThan(400 + HEARD);
  });
});

describe('what would take days', () => {
  it('is refused while its first replication is under way, also with --quiet, and is run with --anyway', async () => {
    const { code, stdout, stderr } = await rateproof(folder, 'simulate', 'swarm.yaml', '--quiet');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(
      /^error: expected the study to be done within 24 h, at this pace it takes \d+ h.*\nhint: .*--anyway\n$/,
    );
    const running = start(folder, 'simulate', 'swarm.yaml', '--anyway');
    await running.told('20 replications in all, one in');
    running.interrupt();
    expect((await running.outcome).code).toBe(130);
  }, 60_000);
});
