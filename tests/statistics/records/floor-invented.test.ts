import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import type { ValidateResults } from '../../../src/study/validate/results.js';
import { SLOW } from './logs.js';

const root = fileURLToPath(new URL('../../..', import.meta.url)),
  log = 'scenarios/data/floor-invented.csv';

it('the invented log of the demo is what the scenario beside it makes', { timeout: SLOW }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'rateproof-floor-')),
    made = join(folder, 'made.csv');
  execFileSync(process.execPath, ['tools/floor-log.mjs', made], { cwd: root });
  expect(readFileSync(made, 'utf8') === readFileSync(join(root, log), 'utf8')).toBe(true);
  expect(statSync(made).size).toBeLessThan(1e6);
  rmSync(folder, { recursive: true });
});

it('validate names the three things that were planted in it, and nothing else', { timeout: SLOW }, () => {
  const { causes } = JSON.parse(
    execFileSync(
      process.execPath,
      [
        'dist/cli/main.js',
        'validate',
        'scenarios/rescue-tender.yaml',
        log,
        '--json',
        '--quiet',
        '--finding-ok',
      ],
      { cwd: root, encoding: 'utf8' },
    ),
  ) as ValidateResults;
  const firm = causes.filter(({ follows }) => !follows).map(({ words }) => words);
  expect(firm.sort()).toEqual([
    expect.stringMatching(/^dirt in clear found, of those that it or a later one finds at inspect finish: /),
    expect.stringMatching(/^people of body builders, from 2027-09-18 on: never more than 3 at work at once/),
    expect.stringMatching(/^working minutes of clear coat: .* 14 % longer$/),
  ]);
});
