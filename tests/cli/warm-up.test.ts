import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rateproof, scenarioFolder } from './run-cli.js';

const folder = scenarioFolder();
const write = (name: string, length: string, work: string): void => writeFileSync(join(folder, name), `
scenario: filling
programme: { arrivals: 1 h, length: ${length}, warm up: mser-5 }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: ${work} }]
`);
write('fills.yaml', '300 h', '1 h');
write('grows.yaml', '300 h', '2 h');

describe('rateproof with a warm-up that is left to MSER-5', { timeout: 30_000 }, () => {
  it('finds it first and says which', async () => {
    const { code, stdout, stderr } = await rateproof(folder, 'simulate', 'fills.yaml', '--replications', '3', '--workers', '1');
    expect(code).toBe(0);
    // One bench fills in the first hour; the first five hours are cut.
    expect(stdout).toMatch(/warm-up found by MSER-5, hours +5 +over 3 runs/);
    expect(stderr).toContain('looking for the warm-up of fills.yaml by MSER-5, seed 1\nrunning 3 replications of fills.yaml, seed 1\n');
  });

  it('is a mistake of the scenario where the run is too short for it', async () => {
    expect(await rateproof(folder, 'simulate', 'grows.yaml', '--quiet')).toMatchObject({
      code: 2, stdout: '', stderr: expect.stringMatching(/^error: grows\.yaml: programme: expected a length within whose first half MSER-5 ends the start-up/) as string,
    });
  });
});
