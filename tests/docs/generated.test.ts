import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pages, TEMPLATE } from '../../tools/docs/reference.js';

const textOf = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

describe('generated files are as the schema says now; if not: npm run docs', () => {
  it.each([...pages(textOf(TEMPLATE))])('%s', (path, text) => {
    expect(textOf(path)).toBe(text);
  });
});
