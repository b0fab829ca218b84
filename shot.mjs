import puppeteer from 'puppeteer-core';
const [,, file, out, ...widths] = process.argv;
const browser = await puppeteer.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
for (const w of widths.map(Number)) {
  const page = await browser.newPage();
  page.on('console', m => console.log('console', m.type(), m.text()));
  page.on('pageerror', e => console.log('pageerror', e.message));
  page.on('request', r => { if (!r.url().startsWith('file:') && !r.url().startsWith('data:')&& !r.url().startsWith('blob:')) console.log('request', r.url()); });
  await page.setViewport({ width: w, height: w > 600 ? 900 : 844 });
  await page.goto('file://' + file);
  await page.waitForFunction(() => document.documentElement.dataset.drawn === 'yes', { timeout: 20000 });
  await page.screenshot({ path: `${out}-${w}.png` });
  const h = await page.evaluate(() => [document.documentElement.scrollHeight, document.documentElement.scrollWidth]);
  console.log(w, h);
  await page.screenshot({ path: `${out}-${w}-full.png`, fullPage: true });
  if (w > 600) await page.pdf({ path: `${out}.pdf`, format: 'A4' });
  await page.close();
}
await browser.close();
