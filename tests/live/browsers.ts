import { existsSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import { afterAll, beforeAll } from 'vitest';

/** What they are called on the path, or where a variable says; `.ci/run` installs both. */
const NAMES = {
  chrome: [process.env['RATEPROOF_CHROMIUM'], 'chromium', 'google-chrome'],
  firefox: [process.env['RATEPROOF_FIREFOX'], 'firefox-esr', 'firefox'],
} as const;

const onPath = (name: string): string[] =>
  isAbsolute(name)
    ? [name]
    : (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, name));

/** Browsers of this machine, with where they are. */
export const BROWSERS = (['chrome', 'firefox'] as const).flatMap((browser) => {
  const path = NAMES[browser].flatMap((name) => (name === undefined ? [] : onPath(name))).find(existsSync);
  return path === undefined ? [] : [[browser, path] as const];
});

/** The two widths that a page is looked at: a desk and a phone. */
export const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
] as const;

export interface Opened {
  readonly page: Page;
  /** What the page complained of, or asked the network for. */
  readonly faults: string[];
}

/**
 * In Firefox the driver itself makes code from text, which the page forbids; in Chromium it does not, so that
 * a page that did would be found there.
 */
const OF_THE_DRIVER = /^(Error: )?Content-Security-Policy: .* blocked a JavaScript eval /;

/** For the tests of a group: opens pages in a browser of their own, which is closed after them. */
export function pagesIn(kind: 'chrome' | 'firefox', executablePath: string) {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await puppeteer.launch({
      ...{ browser: kind, executablePath },
      args: kind === 'chrome' ? ['--no-sandbox'] : [],
    });
  }, 60_000);
  afterAll(() => browser?.close());
  return (file: string, size: (typeof SIZES)[number], before?: string): Promise<Opened> => {
    if (browser === undefined) throw new Error('expected to be asked in a test, got asked ahead of it');
    return open(browser, file, size, before);
  };
}

/**
 * Opens a page from its file and waits until its pictures are drawn.
 * @param before runs before the page's own script
 */
async function open(
  browser: Browser,
  file: string,
  size: (typeof SIZES)[number],
  before?: string,
): Promise<Opened> {
  const page = await browser.newPage(),
    faults: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type()) && !OF_THE_DRIVER.test(message.text()))
      faults.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => {
    if (!OF_THE_DRIVER.test(String(error))) faults.push(String(error));
  });
  page.on('request', (request) => {
    if (!/^(file|blob|data):/.test(request.url())) faults.push(`asks for ${request.url()}`);
  });
  await page.setViewport(size);
  if (before !== undefined) await page.evaluateOnNewDocument(before);
  await page.goto(`file://${file}`);
  // Asked from here: a wait inside the page would be code made from text, which the page forbids itself.
  for (
    let waited = 0;
    !(await page.evaluate(() => document.documentElement.dataset['drawn'] === 'yes'));
    waited++
  ) {
    if (waited > 1200) throw new Error(`expected ${file} to draw its pictures in 30 s`);
    await setTimeout(25);
  }
  return { page, faults };
}
