import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';
import { readArguments } from '../../src/cli/arguments/parse.js';
import { COMMANDS } from '../../src/cli/commands/index.js';
import { CHARTS } from '../../src/report/charts/of-study.js';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { keySchema } from '../../src/scenario/json-schema.js';
import { readScenario } from '../../src/scenario/read.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const pages = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  ...readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];
const textOf = (page: string): string => readFileSync(join(root, page), 'utf8');
const scenarioPage = textOf('docs/scenario.md');

interface Fence {
  readonly info: string;
  readonly body: string;
}

/** Fenced blocks, with the words behind the fence. */
const fencesOf = (text: string): Fence[] =>
  [...text.matchAll(/^```([^\n]*)\n(.*?)^```$/gms)].map(([, info, body]) => ({
    info: info.trim(),
    body: body,
  }));
const fencesWith = (info: string): string[] =>
  fencesOf(scenarioPage)
    .filter((fence) => fence.info === info)
    .map(({ body }) => body);
const prose = (text: string): string => text.replace(/^```.*?^```$/gms, '');

/** Anchors of the headings, as a page of Markdown on the web has them. */
const anchorsOf = (text: string): string[] =>
  [...prose(text).matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} _-]/gu, '')
      .replaceAll(' ', '-'),
  );

function problemsOf(yaml: string): string[] {
  const { problems } = readScenario(yaml, 'page.yaml', (path) => {
    throw new Error(`no file ${path}`);
  });
  return (problems ?? []).map(sayProblem);
}

describe('the links of the pages', () => {
  it.each(pages)('in %s lead to a file, and to a heading where one is named', (page) => {
    const links = [...prose(textOf(page)).matchAll(/\]\(([^)\s]+)\)/g)]
      .map(([, link]) => link)
      .filter((link) => !/^[a-z]+:/.test(link));
    const broken = links.filter((link) => {
      const path = link.split('#')[0],
        anchor = link.split('#').at(1),
        target = path === '' ? page : join(dirname(page), path);
      return (
        !existsSync(join(root, target)) ||
        (anchor !== undefined && !anchorsOf(textOf(target)).includes(anchor))
      );
    });
    expect(broken).toEqual([]);
    if (page !== 'docs/measures.md') expect(links.length).toBeGreaterThan(0);
  });
});

describe('the examples of docs/scenario.md', () => {
  const whole = fencesWith('yaml scenario'),
    fragments = fencesWith('yaml');
  const times = fencesWith('yaml times').flatMap((body) => body.trim().split('\n'));

  it('are of the three kinds looked at here', () => {
    expect(whole.length).toBeGreaterThanOrEqual(6);
    expect(fragments.length).toBeGreaterThanOrEqual(5);
    expect(times.length).toBeGreaterThanOrEqual(18);
    expect(
      fencesOf(scenarioPage).filter(
        ({ info }) => !['yaml', 'yaml scenario', 'yaml times', 'text'].includes(info),
      ),
    ).toEqual([]);
  });

  it.each(whole.map((body) => [/^scenario: (.+)$/m.exec(body)?.[1], body]))(
    'read without a problem: %s',
    (_, body) => {
      expect(problemsOf(body)).toEqual([]);
    },
  );

  it.each(times)('name a time that is understood: %s', (line) => {
    const time = line.replace(/^- /, '').replace(/\s+#.*$/, '');
    const step = `{ step: one, at: bench, work: ${time} }`;
    expect(
      problemsOf(
        `scenario: times\nprogramme: { arrivals: saturated, length: 100 h }\nsites: { hall: { stations: { bench: {} } } }\nroute: [${step}]\n`,
      ),
    ).toEqual([]);
  });

  it.each(fragments)('are YAML: %s', (body) => {
    expect(parseDocument(body, { strict: true, uniqueKeys: true }).errors).toEqual([]);
  });
});

describe('the reference of scenario keys', () => {
  /** Every key that the schema knows, at any depth. */
  function keysOf(node: unknown, found = new Set<string>()): Set<string> {
    if (typeof node !== 'object' || node === null) return found;
    const { properties } = node as { properties?: Record<string, unknown> };
    if (typeof properties === 'object' && !Array.isArray(node))
      for (const key of Object.keys(properties)) found.add(key);
    for (const child of Object.values(node)) keysOf(child, found);
    return found;
  }

  it('has a row for every key of the schema', () => {
    const keys = [...keysOf(keySchema())];
    expect(keys.length).toBeGreaterThan(70);
    const rows = new Set(
      [...scenarioPage.matchAll(/^\|(?: [^|]* ›)? `([^`|]+)` \|/gm)].map(([, key]) => key),
    );
    expect(keys.filter((key) => !rows.has(key))).toEqual([]);
  });
});

describe('the commands shown', () => {
  /** Lines of shell blocks that run the program, by its name or by its built file. */
  const lines = pages
    .flatMap((page) =>
      fencesOf(textOf(page))
        .filter(({ info }) => info === 'sh')
        .flatMap(({ body }) => body.split('\n')),
    )
    .flatMap((line) => /^(?:rateproof|node dist\/cli\/main\.js) ([^#]+)/.exec(line)?.[1]?.trim() ?? []);

  it.each([...new Set(lines)])('rateproof %s is understood', (line) => {
    const words = (line.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replaceAll('"', ''));
    expect(readArguments(COMMANDS, words)).toMatchObject({ command: words[0] });
  });

  it('are several, and a misspelt one would be told', () => {
    expect(lines.length).toBeGreaterThanOrEqual(6);
    const misspelt = ['simulate', 'line.yaml', '--replicas', '5'];
    expect(() => readArguments(COMMANDS, misspelt)).toThrow(/unknown option/);
  });

  it('in text name commands that exist', () => {
    const named = pages.flatMap((page) =>
      [...prose(textOf(page)).matchAll(/`rateproof ([a-z]+)[^`]*`/g)].map(([, command]) => command),
    );
    const known = [...COMMANDS.map(({ name }) => name), 'results'];
    expect(named.filter((command) => !known.includes(command))).toEqual([]);
  });

  it('of npm are scripts of the package', () => {
    const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
    const named = pages.flatMap((page) =>
      [...textOf(page).matchAll(/npm run ([a-z:]+)/g)].map(([, script]) => script),
    );
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
  });

  it('of simulate have every option and every picture described', () => {
    const page = textOf('docs/simulate.md');
    const help = readArguments(COMMANDS, ['simulate', '--help']);
    const options =
      'text' in help
        ? [...help.text.matchAll(/^ {2}(--[a-z-]+)/gm)]
            .map(([, option]) => option)
            .filter((option) => !['--help', '--version'].includes(option))
        : [];
    expect(options.length).toBeGreaterThanOrEqual(8);
    expect(
      [...options, ...Object.keys(CHARTS.simulate).map((name) => `${name}.png`)].filter(
        (word) => !page.includes(`\`${word}\``),
      ),
    ).toEqual([]);
  });
});
