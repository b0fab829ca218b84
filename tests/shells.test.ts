import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../src/cli/commands/index.js';

const root = new URL('../', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const filesIn = (folder: string, ending: RegExp): string[] =>
  readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((name) => ending.test(name));

/** Programs that only a Unix shell has, or that are others on Windows. */
const PROGRAMS =
  /(?:^|&& *)(?:rm|cp|mv|mkdir|rmdir|cat|touch|export|env|test|sh|bash|which|sed|grep|time|\.\/\S+|\[)(?: |$)/;
/** What cmd, PowerShell and sh do not take alike, outside double quotes and within. */
const OUTSIDE: readonly (readonly [RegExp, string])[] = [
  [/'/, 'a single quote'],
  [/[*?[\]{}~]/, 'a pattern or a home folder, which sh expands and cmd does not'],
  [/;/, 'a semicolon between commands'],
  [/\|/, 'a pipe'],
  [/(?:^|&& *)\w+=/, 'a variable set for one command'],
  [/\/dev\//, 'a device of Unix'],
  [/\\/, 'a backslash'],
];
const ANYWHERE: readonly (readonly [RegExp, string])[] = [
  [/\$/, 'a variable'],
  [/`/, 'a backquote'],
  [/%\w+%/, 'a variable of cmd'],
];

/** What in a command a shell of Windows or of Unix does not take, or takes in another way. */
function troubles(command: string): string[] {
  const outside = command.replace(/"[^"]*"/g, '""');
  return [
    ...(PROGRAMS.test(outside) ? ['a program of Unix'] : []),
    ...OUTSIDE.filter(([what]) => what.test(outside)).map(([, name]) => name),
    ...ANYWHERE.filter(([what]) => what.test(command)).map(([, name]) => name),
  ];
}
/** The same of what a person types: PowerShell 5 has no `&&`, and cmd takes `#` for a word. */
const typedTroubles = (line: string): string[] => [
  ...troubles(line),
  ...(/&|(?:^| )#/.test(line.replace(/"[^"]*"/g, '""')) ? ['commands in a row, or a remark'] : []),
];

describe('commands run by every shell', () => {
  const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
  it.each(Object.entries(scripts))('npm run %s', (_, script) => {
    expect(troubles(script)).toEqual([]);
  });

  const pages = ['README.md', 'DEVELOPERS.md', ...filesIn('docs', /\.md$/)];
  const typed = pages.flatMap((page) =>
    [...textOf(page).matchAll(/^```sh\n(.*?)^```$/gms)]
      .flatMap(([, body]) => body.split('\n'))
      .filter((line) => line !== '')
      .map((line) => [page, line] as const),
  );
  it('are many in the pages', () => {
    expect(typed.length).toBeGreaterThan(20);
  });
  it.each(typed)('in %s: %s', (_, line) => {
    expect(typedTroubles(line)).toEqual([]);
  });

  const examples = COMMANDS.flatMap(({ name, examples }) =>
    examples
      .map((each) => (typeof each === 'string' ? each : each[0]).replace(/ {2,}\(.*$/, ''))
      .filter((each) => each.startsWith('rateproof '))
      .map((each) => [name, each] as const),
  );
  it.each(examples)('in the help of %s: %s', (_, line) => {
    expect(typedTroubles(line)).toEqual([]);
  });

  it.each([
    ['rm -rf dist', 'a program of Unix'],
    ['npm run build && cp a b', 'a program of Unix'],
    ['NODE_ENV=test vitest', 'a variable set for one command'],
    ["node -e 'x'", 'a single quote'],
    ['eslint src/**/*.ts', 'a pattern or a home folder, which sh expands and cmd does not'],
    ['vitest > /dev/null', 'a device of Unix'],
    ['node a.js $HOME', 'a variable'],
    ['node a.js; node b.js', 'a semicolon between commands'],
  ])('and %s would be found', (command, trouble) => {
    expect(troubles(command)).toContain(trouble);
  });

  it('and so would what only sh takes when it is typed', () => {
    expect(typedTroubles('npm ci && npm test')).toHaveLength(1);
    expect(typedTroubles('npm test   # all of them')).toHaveLength(1);
    expect(typedTroubles('rateproof buffers line.yaml --at "weld & fit #2"')).toEqual([]);
  });
});

describe('code that runs on every system', () => {
  const files = ['src', 'tests', 'tools', 'bench']
    .flatMap((folder) => filesIn(folder, /\.(?:ts|mjs|js)$/))
    .filter((file) => file !== 'tests/shells.test.ts');

  it.each([
    // On Windows it begins with a slash before the drive.
    [
      'the path of a URL of a file other than by fileURLToPath',
      /import\.meta\.url\)?\.pathname|URL\([^)]*\)\.pathname/,
    ],
    ['a shell', /\bexecSync\(|\bshell: true/],
    ['a folder of Unix', /['"`]\/(?:tmp|dev|proc|usr|etc|home)\//],
  ])('has no %s', (_, what) => {
    expect(files.length).toBeGreaterThan(500);
    expect(files.filter((file) => what.test(textOf(file)))).toEqual([]);
  });
});
