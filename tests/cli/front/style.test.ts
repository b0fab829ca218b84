import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { takesCursor, takesStyle, withBold } from '../../../src/cli/front/style.js';
import { rateproofWith } from '../run-cli.js';

describe('bold letters and lines written over', () => {
  it.each([
    [{}, true, true, true],
    [{}, false, false, false],
    [{ NO_COLOR: '1' }, true, false, false],
    // An empty NO_COLOR says nothing (no-color.org).
    [{ NO_COLOR: '' }, true, true, true],
    [{ TERM: 'dumb' }, true, false, false],
    [{ TERM: 'xterm' }, true, true, true],
    // FORCE_COLOR is asked first, and says nothing of the cursor.
    [{ FORCE_COLOR: '1' }, false, true, false],
    [{ FORCE_COLOR: '' }, false, true, false],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, true, true, false],
    [{ FORCE_COLOR: '0' }, true, false, true],
    [{ FORCE_COLOR: 'false' }, true, false, true],
    [{ FORCE_COLOR: '3', TERM: 'dumb' }, true, true, false],
  ])('with %j, on a terminal: %s, are allowed: %s and %s', (env, isTerminal, style, cursor) => {
    expect([takesStyle(env, isTerminal), takesCursor(env, isTerminal)]).toEqual([style, cursor]);
  });
});

describe('an answer in bold', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rateproof-style-'));
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  writeFileSync(
    join(folder, 'line.yaml'),
    `scenario: line
programme: { start: 2027-03-01, quantity: 3, rate: { per day: 1 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { calendar: days, stations: { bench: {} } } }
route: [{ step: trim, at: bench, work: 2 h }]
`,
  );
  const run = async (env: Record<string, string>, ...more: string[]): Promise<string> => {
    const args = ['simulate', 'line.yaml', '--replications', '2', '--quiet', '--finding-ok', ...more];
    const { code, stdout, stderr } = await rateproofWith({ cwd: folder, env }, ...args);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    return stdout;
  };

  it('is the first paragraph, each of its lines closed, and nothing of the rest', async () => {
    const [plain, bold] = await Promise.all([run({ NO_COLOR: '1' }), run({ FORCE_COLOR: '1' })]),
      [answer = '', ...rest] = plain.split('\n\n');
    expect(plain).not.toContain('\u001b');
    const [first = '', ...others] = bold.split('\n\n');
    expect(others).toEqual(rest);
    expect(first.split('\n')).toEqual(answer.split('\n').map((line) => `\u001b[1m${line}\u001b[22m`));
  });

  it('is not where a program reads it, and a text without an answer has none', async () => {
    expect(await run({ FORCE_COLOR: '1' }, '--json')).not.toContain('\u001b');
    expect(withBold('a\n\nb', 0)).toBe('a\n\nb');
  });
});
