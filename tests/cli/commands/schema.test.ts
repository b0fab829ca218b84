import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();

describe('rateproof schema', { timeout: 30_000 }, () => {
  it('prints the schema that scenarios/ holds; if not: node dist/cli/main.js schema --out scenarios/scenario.schema.json', async () => {
    const committed = readFileSync(
      new URL('../../../scenarios/scenario.schema.json', import.meta.url),
      'utf8',
    );
    expect(await runHere(folder, 'schema')).toEqual({ code: 0, stdout: committed, stderr: '' });
  });

  it('writes the same to a file, also over an older schema', async () => {
    writeFileSync(
      join(folder, 'old.schema.json'),
      '{ "$schema": "http://json-schema.org/draft-07/schema#" }',
    );
    expect(await runHere(folder, 'schema', '--out', 'old.schema.json')).toEqual({
      code: 0,
      stdout: '',
      stderr: '',
    });
    const { stdout } = await runHere(folder, 'schema');
    expect(readFileSync(join(folder, 'old.schema.json'), 'utf8')).toBe(stdout);
  });
});
