import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runHere } from '../cli/run-here.js';
import { BROWSERS, pagesIn, SIZES } from './browsers.js';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  [DESK, PHONE] = SIZES;
const folder = mkdtempSync(join(tmpdir(), 'rateproof-live-map-')),
  report = join(folder, 'report/report.html');

beforeAll(async () => {
  const lanes = fileURLToPath(new URL('../../scenarios/rules/11-lanes.yaml', import.meta.url));
  const { stderr } = await runHere(
    folder,
    ...['simulate', lanes, '--replications', '3', '--finding-ok', '--quiet', '--out', 'report'],
  );
  expect(stderr).toBe('');
}, 60_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const said = (page: Page, form: string): Promise<string> =>
  page.$eval(`.map.${form} .said`, (each) => each.textContent);
/** What is shown, and where it stands. */
const told = (page: Page, form: string): Promise<{ text: string; left: number; right: number } | null> =>
  page.$eval(`.map.${form} .told`, (each) => {
    const { left, right } = each.getBoundingClientRect();
    return (each as HTMLElement).hidden ? null : { text: each.textContent, left, right };
  });

describe.each(BROWSERS)('the map of a page in %s', { timeout: 60_000 }, (kind, path) => {
  const open = pagesIn(kind, path);

  it('is one stop of the tab key, told place by place by arrow keys, and left by Escape', async () => {
    const { page, faults } = await open(report, DESK);
    expect(await page.$$eval('.map.wide [tabindex], .map.wide a', (all) => all.length)).toBe(0);
    await page.focus('.map.wide');
    const heard: string[] = [];
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowLeft', 'End', 'Home'] as const) {
      await page.keyboard.press(key);
      heard.push((await said(page, 'wide')).split('.')[0] ?? '');
    }
    const [first, second, again, last, home] = heard;
    expect([again, home]).toEqual([first, first]);
    expect(new Set([first, second, last]).size).toBe(3);
    expect(await said(page, 'wide')).toMatch(/in use \d+ % of the hours on shift/);
    expect((await told(page, 'wide'))?.text).toContain(home);
    await page.keyboard.press('Escape');
    expect(await told(page, 'wide')).toBeNull();
    expect(faults).toEqual([]);
    await page.close();
  });

  it('tells of a mark under the mouse, of its text, and of a lane', async () => {
    const { page } = await open(report, DESK);
    for (const name of ['.map-stop', '.map-words[data-place]', '.map-lane']) {
      await page.hover(`.map.wide ${name}`);
      expect((await told(page, 'wide'))?.text, name).toMatch(/\d/);
      await page.keyboard.press('Escape');
    }
    await page.close();
  });

  it('is told at a tap on a phone, within its width, and closed by a tap beside it', async () => {
    const { page, faults } = await open(report, PHONE);
    const mark = await page.$('.map.narrow .map-stop');
    await mark?.scrollIntoView();
    await mark?.click();
    const here = await told(page, 'narrow');
    expect(here?.text).toMatch(/\d place/);
    expect(here?.left).toBeGreaterThanOrEqual(0);
    expect(here?.right).toBeLessThanOrEqual(PHONE.width);
    await page.click('.map.narrow', { offset: { x: 4, y: 4 } });
    expect(await told(page, 'narrow')).toBeNull();
    expect(faults).toEqual([]);
    await page.close();
  });

  it.runIf(kind === 'chrome').each(SIZES)(
    'has no violation that axe-core finds with its words open, at $width',
    async (size) => {
      const { page } = await open(report, size);
      const form = size.width > 1000 ? 'wide' : 'narrow';
      await page.focus(`.map.${form}`);
      await page.keyboard.press('ArrowRight');
      await page.evaluate(readFileSync(AXE, 'utf8'));
      const violations = await page.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run: (on: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const { violations: found } = await axe.run('.route');
        return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
      });
      expect(violations).toEqual([]);
      await page.close();
    },
  );

  it.runIf(kind === 'chrome')('stands on paper in the form for paper alone', async () => {
    const { page } = await open(report, DESK);
    await page.emulateMediaType('print');
    const shown = await page.$$eval('.map', (all) =>
      all.filter((each) => each.clientHeight > 0).map((each) => each.className),
    );
    expect(shown).toEqual(['map paper']);
    await page.close();
  });
});
