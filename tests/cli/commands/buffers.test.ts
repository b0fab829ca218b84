import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
writeFileSync(
  join(folder, 'line.yaml'),
  `scenario: line
programme: { arrivals: saturated, length: 300 h }
sites: { hall: { stations: { first: {}, second: { buffer: 1 }, third: {} } } }
route: [{ step: a, at: first, work: { exponential: { mean: 1 h } } }, { step: b, at: second, work: { exponential: { mean: 1 h } } }, { step: c, at: third, work: { exponential: { mean: 1 h } } }]
`,
);
const FEW = ['--replications', '3', '--workers', '1'];

describe('rateproof buffers', { timeout: 30_000 }, () => {
  it('prints the answer, tells its stages, and writes a folder with what --json prints', async () => {
    const { code, stdout, stderr } = await runHere(
      folder,
      'buffers',
      'line.yaml',
      '--budget',
      '2',
      ...FEW,
      '--json',
      '--out',
      'places',
    );
    expect(code).toBe(0);
    expect(stderr).toMatch(
      /^running 3 replications of line\.yaml as it is, seed 1\nsharing out 2 places over 2 spots\nselecting among \d layouts with 2 places\nlooking for the fewest places within 1 % of the best found\nlooking at a place more and fewer, spot by spot\nlooking at what stops the build with the layout chosen\ndrawing the report\nreport: places\n$/,
    );
    expect(JSON.parse(stdout)).toMatchObject({ study: 'buffers', chosen: { total: 2 } });
    expect(readFileSync(join(folder, 'places/results.json'), 'utf8')).toBe(stdout);
    const files = readdirSync(join(folder, 'places'));
    for (const name of ['layouts.csv', 'map.png', 'map.svg']) expect(files).toContain(name);
  });

  it('takes several --at, and exits with 3 where no number of places is enough', async () => {
    const both = await runHere(
      folder,
      'buffers',
      'line.yaml',
      '--budget',
      '1',
      '--at',
      'second',
      '--at=third',
      ...FEW,
      '--json',
      '--quiet',
    );
    expect((JSON.parse(both.stdout) as { spots: { name: string }[] }).spots.map(({ name }) => name)).toEqual([
      'second',
      'third',
    ]);
    const short = await runHere(folder, 'buffers', 'line.yaml', '--target', '2', ...FEW, '--quiet');
    expect(short.code).toBe(3);
    expect(short.stdout).toMatch(
      /^Out of reach[^]*^In full: 2 units an hour are out of reach of waiting places/m,
    );
  });

  it.each<[string, string[], string]>([
    ['no goal', [], 'expected either --budget or --target, got none'],
    ['two goals', ['--budget', '3', '--target', '1'], 'expected either --budget or --target, got both'],
    [
      'a target in words',
      ['--target', 'four'],
      '--target: expected a number above 0 and at most 100,000, or a share of what another layout ships, got "four"',
    ],
    ...['98 % of best', '201 % of present', '0 % of present'].map((text): [string, string[], string] => [
      `a target of ${text}`,
      ['--target', text],
      `--target: expected a number above 0 and at most 100,000, or a share of what another layout ships, got "${text}"`,
    ]),
    ['half a place', ['--budget', '1.5'], '--budget: expected a whole number from 0 to 100,000, got "1.5"'],
    [
      'a zone without its sign',
      ['--budget', '3', '--zone', '1'],
      '--zone: expected per cent above 0 and below 100, got "1"',
    ],
    [
      'another beginning',
      ['--budget', '3', '--from', 'zero'],
      '--from: expected least or present, got "zero"',
    ],
    [
      'a station that there is not',
      ['--budget', '3', '--at', 'thrid'],
      '--at: expected a station or lane of the route, got "thrid"',
    ],
  ])('refuses %s before the run', async (_, args, error) => {
    const { code, stdout, stderr } = await runHere(folder, 'buffers', 'line.yaml', ...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(`error: ${error}`);
    expect(stderr).not.toContain('running');
  });

  it('takes what-ifs as cases: a table of them, a picture, and a clear word for what it cannot take', async () => {
    writeFileSync(
      join(folder, 'cases.yaml'),
      'slow end: { changes: [{ route.c.work: { exponential: { mean: 2 h } } }] }\n',
    );
    writeFileSync(
      join(folder, 'room.yaml'),
      'room: { changes: [{ sites.hall.stations.second.buffer: 3 }] }\n',
    );
    const asked = ['buffers', 'line.yaml', '--budget', '2', ...FEW, '--quiet'];
    const { code, stdout } = await runHere(folder, ...asked, '--cases', 'cases.yaml', '--out', 'cases');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^\d waiting places?: in the weakest case [\d.]+ % is lost\.\n|^\d waiting places?: in the/,
    );
    expect(stdout).toMatch(/\nslow end +[\d.]+ +[\d.]+ /);
    const files = readdirSync(join(folder, 'cases'));
    for (const name of ['cases.csv', '06-cases.png', 'map.svg']) expect(files).toContain(name);
    expect(files).not.toContain('01-throughput-by-places.png');
    expect(readFileSync(join(folder, 'cases/cases.csv'), 'utf8')).toMatch(
      /^layout,places,case,rate_mean,lost,/,
    );
    const { statistics, bold } = firstScreenOf(readFileSync(join(folder, 'cases/report.html'), 'utf8'));
    expect(bold).toEqual([]);
    expect(statistics).toEqual([]);
    const room = await runHere(folder, ...asked, '--cases', 'room.yaml');
    expect(room.code).toBe(2);
    expect(room.stderr).toMatch(
      /^error: --cases: expected what-ifs that leave the places at "second" as they are, got 3/,
    );
    const none = await runHere(folder, ...asked, '--cases', '');
    expect(none.stderr).toMatch(/^error: --cases: expected a file of what-ifs, got none/);
  });
});

/** Words of statistics ahead of the first picture, and what stands in bold there and is too long. */
function firstScreenOf(html: string) {
  const first = html.slice(html.indexOf('<h1'), html.search(/<figure/)),
    words = first.replace(/<[^>]*>/g, ' ');
  return {
    statistics: words.match(/\bCI\b|replications?|\bpaired\b|\bpairs\b|\bmeans?\b|quantile|variance/gi) ?? [],
    bold: [...first.matchAll(/<h1\b[^>]*>(.*?)<\/h1>/gs)]
      .map(([, text = '']) => text)
      .filter((text) => text.trim().split(/\s+/).length > 12),
  };
}
