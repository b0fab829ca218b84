import { spawn } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contents, MAIN, scenarioFolder } from './run-cli.js';
import { runHere } from './run-here.js';

const folder = scenarioFolder();
writeFileSync(
  join(folder, 'narrow.yaml'),
  readFileSync(join(folder, 'slack.yaml'), 'utf8').replace(
    'trim bench: { buffer: unlimited }',
    'trim bench: { buffer: 1 }',
  ),
);
writeFileSync(join(folder, 'what-ifs.yaml'), 'faster: { changes: { route.build.work: 110 min } }\n');

const COMMON = ['--workers', '1', '--finding-ok'];
const SIMULATE = ['simulate', 'slack.yaml', '--replications', '3', ...COMMON];
/** A small run of each study. */
const STUDIES: readonly (readonly string[])[] = [
  SIMULATE,
  ['compare', 'slack.yaml', 'what-ifs.yaml', '--replications', '3', ...COMMON],
  [
    'rate',
    'slack.yaml',
    '--from',
    '3',
    '--to',
    '4',
    '--step',
    '0.5',
    '--weeks',
    '4',
    '--replications',
    '4',
    ...COMMON,
  ],
  ['reliefs', 'tight.yaml', '--replications', '4', ...COMMON],
  ['buffers', 'narrow.yaml', '--budget', '2', '--at', 'trim bench', '--replications', '4', ...COMMON],
];

/** Makes each thread kill the process, which cannot notice, right before or behind its rename number `at`. */
const killing = (at: number, when: 'before' | 'behind'): string => `
  import fs from 'node:fs';
  import { syncBuiltinESMExports } from 'node:module';
  const { renameSync } = fs, die = () => process.kill(process.pid, 'SIGKILL');
  let renames = 0;
  fs.renameSync = (...paths) => {
    const isIt = ++renames === ${at};
    if (isIt && ${when === 'before'}) die();
    renameSync(...paths);
    if (isIt) die();
  };
  syncBuiltinESMExports();
`;

/** Runs the program to such a kill. Rejects where it was not killed. */
async function killedAtRename(at: number, when: 'before' | 'behind', args: readonly string[]): Promise<void> {
  const hook = `data:text/javascript,${encodeURIComponent(killing(at, when))}`,
    child = spawn(process.execPath, ['--import', hook, MAIN, ...args], { cwd: folder, stdio: 'ignore' });
  const signal = await new Promise((resolve) =>
    child.on('close', (_, by) => {
      resolve(by);
    }),
  );
  if (signal !== 'SIGKILL')
    throw new Error(`expected the program to be killed, it ended by ${String(signal)}`);
}

const own = (name: string): string[] =>
  readdirSync(folder)
    .filter((each) => each.includes(name))
    .sort();

describe('a report that was cut off by kill -9', { timeout: 120_000 }, () => {
  it.each(STUDIES)(
    'before and behind its rename is made by the same %s, to the same bytes',
    async (...args) => {
      const [study = ''] = args,
        whole = await runHere(folder, ...args, '--out', `${study}-whole`);
      expect(whole.stderr).toContain(`report: ${study}-whole`);

      // Once before it, then, on the way again, behind it.
      const name = `${study}-cut`,
        cut = [...args, '--out', name];
      await killedAtRename(1, 'before', cut);
      expect(own(name)).toEqual([expect.stringMatching(/^\..*\.new-/), `${name}.journal`]);
      await killedAtRename(1, 'behind', cut);
      expect(own(name)).toEqual([name, `${name}.journal`]);
      const again = await runHere(folder, ...cut);
      expect(again).toMatchObject({ code: 0, stdout: whole.stdout });
      expect(again.stderr).toContain(
        `${name} is the report of this very study already, and whole; nothing was written`,
      );
      expect(contents(join(folder, name))).toEqual(contents(join(folder, `${study}-whole`)));
      expect(own(name)).toEqual([name]);
    },
  );

  it('is not taken for that of another study, nor for one of fewer replications', async () => {
    const run = [...SIMULATE, '--out', 'other'];
    await killedAtRename(1, 'behind', run);
    const seed = await runHere(folder, ...run, '--seed', '2');
    expect(seed.code).toBe(2);
    expect(seed.stderr).toContain('other: expected a name not taken yet, got an existing folder');
    const more = await runHere(folder, ...SIMULATE, '--replications', '4', '--out', 'other');
    expect(more.code).toBe(2);
    expect(more.stderr).toContain('other: expected a name not taken yet, got an existing folder');
    expect((await runHere(folder, ...run)).code).toBe(0);
  });

  it.each([
    [1, 'before'],
    [1, 'behind'],
    [2, 'behind'],
  ] as const)(
    'in the place of another, at rename %i, %s it, is made by the same command, and the other is not lost',
    async (at, when) => {
      const name = `replaced-${at}-${when}`,
        run = [...SIMULATE, '--out', name];
      if (!existsSync(join(folder, 'seven')))
        await runHere(folder, ...SIMULATE, '--seed', '7', '--out', 'seven');
      cpSync(join(folder, 'seven'), join(folder, name), { recursive: true });
      const old = contents(join(folder, name));
      await killedAtRename(at, when, [...run, '--replace']);
      const kept = own(name).filter((each) => existsSync(join(folder, each, 'results.json')));
      if (at === 1) expect(kept.map((each) => contents(join(folder, each)))).toContainEqual(old);
      const again = await runHere(folder, ...run, '--replace');
      expect(again.code).toBe(0);
      expect(contents(join(folder, name))).toEqual(contents(join(folder, 'simulate-whole')));
      expect(own(name)).toEqual([name]);
    },
  );
});

describe('a shard and a merge that were cut off by kill -9', { timeout: 120_000 }, () => {
  const shard = (index: number, out: string): string[] => [
    ...SIMULATE,
    ...['--shard', `${index}/2`, '--out', out],
  ];

  it('before and behind the rename are made by the same commands, to the bytes of one run', async () => {
    const whole = await runHere(folder, ...SIMULATE);
    await killedAtRename(1, 'before', shard(1, 'first'));
    expect(existsSync(join(folder, 'first'))).toBe(false);
    await killedAtRename(1, 'behind', shard(2, 'second'));
    expect((await runHere(folder, ...shard(1, 'first'))).code).toBe(0);
    const again = await runHere(folder, ...shard(2, 'second'));
    expect(again.code).toBe(0);
    expect(again.stderr).toContain('second is shard 2 of 2 of this very study already');

    const merge = ['merge', 'first', 'second', '--finding-ok', '--workers', '1', '--out', 'merged'];
    await killedAtRename(1, 'before', merge);
    expect(existsSync(join(folder, 'merged'))).toBe(false);
    const merged = await runHere(folder, ...merge);
    expect(merged).toMatchObject({ code: 0, stdout: whole.stdout });
    expect(contents(join(folder, 'merged'))).toEqual(contents(join(folder, 'simulate-whole')));
  });
});
