import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type InputOptions, rolldown } from 'rolldown';
import { describe, expect, it } from 'vitest';
import { BROWSERS, pagesIn, SIZES } from './browsers.js';

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url)),
  KEPT = readFileSync(path('../study/standard-run.sha256'), 'utf8').trim();

/** The last one says how the engine of the page is built. */
const configs = (await import(path('../../rolldown.config.js'))) as { readonly default: InputOptions[] };

describe.each(BROWSERS)('the standard run in %s', { timeout: 60_000 }, (kind, browser) => {
  const open = pagesIn(kind, browser),
    folder = mkdtempSync(join(tmpdir(), 'standard-run-'));

  it('comes to the bits that are kept in the repository', async () => {
    const input = path('../../src/study/standard-run.ts'),
      bundle = await rolldown({ ...configs.default.at(-1), input }),
      { output } = await bundle.generate({ format: 'iife', name: 'built' });
    writeFileSync(
      join(folder, 'page.html'),
      `<!doctype html><meta charset="utf-8"><script>${output[0].code}
        document.title = Array.from(built.standardRun(), (byte) => byte.toString(16).padStart(2, '0')).join('');
        document.documentElement.dataset.drawn = 'yes';</script>`,
    );
    const { page } = await open(join(folder, 'page.html'), SIZES[0]),
      bytes = Buffer.from(await page.title(), 'hex');
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(KEPT);
    rmSync(folder, { recursive: true });
  });
});
