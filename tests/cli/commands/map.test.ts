import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parsed } from '../../report/map/parsed.js';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
const map = (...args: string[]) => runHere(folder, 'map', 'slack.yaml', ...args);
const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47]);

describe('rateproof map', { timeout: 30_000 }, () => {
  it('prints an SVG of 1440 pixels without --out, and runs nothing', async () => {
    const { code, stdout, stderr } = await map();
    expect([code, stderr]).toEqual([0, '']);
    expect(parsed(stdout).root).toMatchObject({ width: '1440', role: 'img' });
  });

  it('writes the same to a file, and a PNG where the name ends so', async () => {
    expect(await map('--out', 'a.svg')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toBe((await map()).stdout);
    expect(await map('--out', 'a.PNG')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(readFileSync(join(folder, 'a.PNG')).subarray(0, 4)).toEqual(PNG);
  });

  it('draws for a phone, for paper and in a width of its own', async () => {
    const widths = await Promise.all(
      [
        ['--for', 'phone'],
        ['--for', 'paper'],
        ['--width', '700'],
      ].map(async (args) => parsed((await map(...args)).stdout).root['width']),
    );
    expect(widths).toEqual(['390', '210mm', '700']);
  });

  it('writes over a file only if asked to, and never over a folder', async () => {
    writeFileSync(join(folder, 'mine.svg'), 'mine');
    mkdirSync(join(folder, 'folder.svg'));
    const refused = await map('--out', 'mine.svg');
    expect(refused).toMatchObject({ code: 2, stdout: '' });
    expect(refused.stderr).toContain('expected mine.svg to be free, got an existing file');
    expect(readFileSync(join(folder, 'mine.svg'), 'utf8')).toBe('mine');
    expect(await map('--out', 'folder.svg', '--replace')).toMatchObject({ code: 2 });
    expect(await map('--out', 'mine.svg', '--replace')).toMatchObject({ code: 0 });
    expect(readFileSync(join(folder, 'mine.svg'), 'utf8')).toMatch(/^<svg /);
  });

  it.each([
    [['--out', 'map.gif'], '--out: expected a file that ends in .svg or .png, got "map.gif"'],
    [['--out', 'none/map.svg'], 'expected to be able to write none/map.svg'],
    [['--for', 'wall'], '--for: expected screen or phone or paper, got "wall"'],
    [['--width', '100'], '--width: expected a whole number from 320 to 4,000, got "100"'],
    [['--replace'], '--replace: expected --out with the picture to replace, got none'],
  ])('refuses %j', async (args, message) => {
    const { code, stdout, stderr } = await map(...args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain(message);
  });

  it('tells the problems of a scenario and draws nothing', async () => {
    writeFileSync(join(folder, 'broken.yaml'), 'scenario: broken\nroute: [{ step: a, at: nowhere }]\n');
    const { code, stderr } = await runHere(folder, 'map', 'broken.yaml', '--out', 'broken.svg');
    expect(code).toBe(2);
    expect(stderr).toContain('broken.yaml:');
    expect(existsSync(join(folder, 'broken.svg'))).toBe(false);
  });

  it('stands in the report of simulate in both forms, with what the run has seen', async () => {
    await runHere(folder, 'simulate', 'slack.yaml', '--replications', '2', '--quiet', '--out', 'report');
    const svg = readFileSync(join(folder, 'report/map.svg'), 'utf8');
    expect(parsed(svg).texts.get('text')?.join(' ')).toContain('2 replications');
    expect(readFileSync(join(folder, 'report/map.png')).subarray(0, 4)).toEqual(PNG);
    const again = await runHere(
      folder,
      ...['simulate', 'slack.yaml', '--replications', '2', '--quiet', '--out', 'report', '--replace'],
    );
    expect(again.code).not.toBe(2);
  });
});
