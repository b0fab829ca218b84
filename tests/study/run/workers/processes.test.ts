import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { Meter } from '../../../../src/study/run/meter.js';
import { Replicator, type ReplicatorOptions, whole } from '../../../../src/study/run/replicator.js';
import { Processes, type ProcessesOptions } from '../../../../src/study/run/workers/processes.js';
import { WorkersError } from '../../../../src/study/run/workers/workers-error.js';
import { benchVariant } from '../bench-variant.js';

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url)),
  WORKER = [process.execPath, path('../../../../dist/cli/main.js'), 'worker'];
const VARIANTS = [benchVariant(5, whole), benchVariant(8, whole)];

/** The words of a worker that misbehaves once, or always. */
function spoilt(how: string, often: 'once' | 'always' = 'once'): string[] {
  const file = join(mkdtempSync(join(tmpdir(), 'workers-')), often === 'once' ? 'file' : 'file-always');
  writeFileSync(file, '');
  return [process.execPath, path('spoilt-worker.mjs'), how, file];
}

const isThere = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

const opened: Processes[] = [];
function open(options: Partial<ProcessesOptions> = {}) {
  const said: string[] = [],
    pids: number[] = [];
  const processes = new Processes({
    commands: [WORKER],
    workers: 2,
    say: (line) => said.push(line),
    onProcess: (pid, began) => {
      if (began) pids.push(pid);
    },
    ...options,
  });
  opened.push(processes);
  return { processes, said, pids };
}

async function rows(options: Partial<ReplicatorOptions>, to = 6) {
  const replicator = new Replicator({ seed: 'a', workers: 1, ...options });
  try {
    return await replicator.rows(VARIANTS, 1, to);
  } finally {
    await replicator.close();
  }
}

describe('workers that are processes', { timeout: 60_000 }, () => {
  afterEach(async () => {
    await Promise.all(opened.splice(0).map((each) => each.close()));
  });

  it('give what threads give, in order, to the bit', async () => {
    const { processes, said } = open({ workers: 3 });
    expect(await rows({ workers: 3, through: processes.runner })).toStrictEqual(await rows({ workers: 2 }));
    expect(said).toEqual([]);
  });

  it('are kept from one replicator to the next, and are gone when they are closed', async () => {
    const { processes, pids } = open(),
      here = await rows({});
    for (let turn = 0; turn < 3; turn++)
      expect(await rows({ workers: 2, through: processes.runner })).toStrictEqual(here);
    expect(pids).toHaveLength(2);
    expect(pids.every(isThere)).toBe(true);
    await processes.close();
    expect(pids.filter(isThere)).toEqual([]);
  });

  it('tell variants of one name apart that two replicators ask for', async () => {
    const { processes } = open({ workers: 1 });
    const ask = async (mean: number): Promise<number> => {
      const replicator = new Replicator({ seed: 'a', workers: 1, through: processes.runner }),
        [end = NaN] = await replicator.row(
          { ...benchVariant(mean, ({ leadMean }) => leadMean), key: 'base' },
          1,
          1,
        );
      await replicator.close();
      return end;
    };
    expect(await ask(5)).toBeLessThan(await ask(8));
  });

  it.each([
    ['dies', /^worker \d was ended by SIGKILL; its replication is run again$/],
    ['hangs', /^worker \d was not heard of for 8 s; its replication is run again$/],
    ['babbles', /^worker \d wrote to its standard output what is no answer: "a debug message/],
    ['welcomes', /^worker \d did not greet as a worker does, but wrote "Welcome to node7"$/],
    [
      'greets',
      /^worker \d is of another program: version there 0\.1\.0, here \S+; build there b, here \w+; messages there V8 9, LE, here V8 \d+, [BL]E; bits there none, here \w{16}$/,
    ],
    ['fails', /^worker \d ended with exit code 7$/],
  ])('one that %s is told and replaced, and changes nothing', async (how, told) => {
    const { processes, said, pids } = open({ commands: [spoilt(how)], workers: 1, patience: 8 });
    expect(await rows({ workers: 1, through: processes.runner })).toStrictEqual(await rows({}));
    const failures = said.filter((line) => /^worker \d [a-z]/.test(line));
    expect(failures).toHaveLength(1);
    expect(failures[0]).toMatch(told);
    expect(pids).toHaveLength(2);
    await processes.close();
    expect(pids.filter(isThere)).toEqual([]);
  });

  it('what they write to their standard error is told, with whose it is', async () => {
    const { processes, said } = open({ commands: [spoilt('fails')], workers: 1 });
    await rows({ workers: 1, through: processes.runner });
    expect(said).toEqual([
      'worker 1: no room on node7',
      'worker 1: ask again tomorrow',
      'worker 1 ended with exit code 7',
    ]);
  });

  it.each([
    [
      'no such command',
      ['no-such-command-at-all'],
      /cannot be started: there is no such command; .*no-such/,
      [],
    ],
    [
      'one that fails',
      spoilt('fails', 'always'),
      /ended with exit code 7; /,
      ['no room on node7', 'ask again tomorrow'],
    ],
    [
      'one that greets as another',
      spoilt('greets', 'always'),
      /is of another program: version there 0\.1\.0/,
      [],
    ],
  ])('%s ends the study, in words, after three starts', async (_, command, message, lines) => {
    const { processes, said } = open({ commands: [command], workers: 1 });
    const error: unknown = await rows({ through: processes.runner }).catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(WorkersError);
    expect((error as WorkersError).message).toMatch(message);
    expect((error as WorkersError).said).toEqual(lines);
    expect(said.filter((line) => /^worker 1 [a-z]/.test(line))).toHaveLength(3);
  });

  it('one that always fails leaves the work to the others', async () => {
    const { processes, said } = open({ commands: [WORKER, spoilt('fails', 'always')] });
    expect(await rows({ workers: 2, through: processes.runner })).toStrictEqual(await rows({}));
    expect(said).toContainEqual(expect.stringMatching(/^worker 2 \(\S+ \S+spoilt-worker\.mjs\) ended with/));
  });

  it('a replication of which three workers die in turn ends the study', async () => {
    const { processes } = open({ commands: [spoilt('dies', 'always')], workers: 1 });
    await expect(rows({ through: processes.runner })).rejects.toThrow(
      /^expected workers to live through replication 1, got 3 in turn that did not: the last one was ended by SIGKILL$/,
    );
  });

  it('a fault of the engine is told as it is', async () => {
    const { processes } = open(),
      variant = benchVariant(5, whole),
      { model } = variant,
      programme = { ...model.programme, release: 9, intervalDraw: 99 },
      replicator = new Replicator({ seed: 'a', workers: 2, through: processes.runner });
    await expect(
      replicator.rows([{ ...variant, key: 'broken', model: { ...model, programme } }], 1, 4),
    ).rejects.toThrow(/engine|undefined|Cannot read/);
    await replicator.close();
  });

  it('stop with the reason of the signal', async () => {
    const { processes } = open(),
      controller = new AbortController();
    const running = rows(
      {
        workers: 2,
        through: processes.runner,
        signal: controller.signal,
        onReplication: (done) => {
          if (done === 2) controller.abort(new Error('enough'));
        },
      },
      50,
    );
    await expect(running).rejects.toThrow('enough');
  });

  it('tell how far each is, into the meter', async () => {
    const { processes } = open({ workers: 1 }),
      meter = new Meter(),
      { model } = benchVariant(9.9, whole),
      programme = { ...model.programme, end: 1e9 },
      replicator = new Replicator({ seed: 'a', workers: 1, through: processes.runner, meter }),
      variant = { key: 'long', model: { ...model, programme, horizon: 1e9 }, read: whole };
    const running = replicator.row(variant, 1, 1).catch(() => undefined);
    let most = 0;
    for (let waited = 0; waited < 400 && most === 0; waited++) {
      await setTimeout(50);
      most = meter.inside;
    }
    expect(most).toBeGreaterThan(0);
    expect(most).toBeLessThanOrEqual(1);
    await replicator.close();
    await running;
    expect(meter.inside).toBe(0);
  });
});
