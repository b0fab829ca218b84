import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
const write = (name: string, length: string, work: string): void => {
  writeFileSync(
    join(folder, name),
    `
scenario: filling
programme: { arrivals: 1 h, length: ${length}, warm up: mser-5 }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: ${work} }]
`,
  );
};
write('fills.yaml', '300 h', '1 h');
write('grows.yaml', '300 h', '2 h');

describe('rateproof with a warm-up that is left to MSER-5', { timeout: 30_000 }, () => {
  it('finds it first and says which', async () => {
    const { code, stdout, stderr } = await runHere(
      folder,
      'simulate',
      'fills.yaml',
      '--replications',
      '3',
      '--workers',
      '1',
    );
    expect(code).toBe(0);
    // One bench fills in the first hour; a five of a pilot of a week is 2.8 h, and three times that is 8.4 h.
    expect(stdout).toMatch(/warm-up found by MSER-5, hours +8\.4 +over 3 runs/);
    expect(stderr).toContain(
      'looking for the warm-up of fills.yaml by MSER-5, seed 1\nrunning 3 replications of fills.yaml, seed 1\n',
    );
  });

  it.each<[string, string[]]>([
    ['compare', ['what-ifs.yaml']],
    ['reliefs', []],
    ['buffers', ['--budget', '2']],
  ])('gives it to every variant of %s', async (study, words) => {
    const line = (warmUp: string): string => `
scenario: filling
programme: { arrivals: 1 h, length: 300 h, warm up: ${warmUp} }
sites: { hall: { stations: { bench: { buffer: unlimited }, test: { buffer: 1 } } } }
route: [{ step: fit, at: bench, work: { value: 1 h, basis: guess } }, { step: look, at: test, work: 30 min }]
`;
    writeFileSync(
      join(folder, 'what-ifs.yaml'),
      'room: { changes: { sites.hall.stations.test.buffer: 4 } }\n',
    );
    const ask = async (
      file: string,
    ): Promise<{ readonly json: string; readonly hours: string | undefined }> => {
      const { stdout, stderr } = await runHere(
        folder,
        study,
        file,
        ...words,
        '--replications',
        '4',
        '--workers',
        '1',
        '--json',
        '--finding-ok',
      );
      // The scenario itself is another: its digest and those of its variants.
      return {
        json: stdout.replaceAll(/sha256:[0-9a-f]{64}/g, ''),
        hours: /looking for the warm-up/.exec(stderr)?.[0],
      };
    };
    writeFileSync(join(folder, 'line.yaml'), line('mser-5'));
    const found = await ask('line.yaml');
    expect(found.hours).toBeDefined();
    const { stdout } = await runHere(
      folder,
      'simulate',
      'line.yaml',
      '--replications',
      '3',
      '--quiet',
      '--finding-ok',
    );
    const hours = /warm-up found by MSER-5, hours +([\d.]+)/.exec(stdout)![1];
    expect(Number(hours)).toBeGreaterThan(0);
    writeFileSync(join(folder, 'line.yaml'), line(`${hours} h`));
    expect(await ask('line.yaml')).toEqual({ json: found.json, hours: undefined });
    writeFileSync(join(folder, 'line.yaml'), line('0 h'));
    expect((await ask('line.yaml')).json).not.toBe(found.json);
  });

  it('is a mistake of the scenario where the line never ends filling', async () => {
    expect(await runHere(folder, 'simulate', 'grows.yaml', '--quiet')).toMatchObject({
      code: 2,
      stdout: '',
      stderr: expect.stringMatching(
        /^error: grows\.yaml:\d+:\d+ programme: expected a start-up that MSER-5 ends within a quarter of 32 times the length/,
      ) as string,
    });
  });
});
