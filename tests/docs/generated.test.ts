import { jsonSchema, keySchema } from '../../src/scenario/json-schema.js';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reference } from '../../tools/docs/reference.js';

// `npm run docs` runs this file with --update, which writes both.
describe('generated files are as the schema says now; if not: npm run docs', () => {
  it('docs/scenario.md', async () => {
    const template = readFileSync(new URL('../../docs/template/scenario.md', import.meta.url), 'utf8');
    await expect(reference(keySchema(), template)).toMatchFileSnapshot('../../docs/scenario.md');
  });

  it('scenarios/scenario.schema.json', async () => {
    await expect(`${JSON.stringify(jsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
      '../../scenarios/scenario.schema.json',
    );
  });
});
