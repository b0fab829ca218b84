import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { MovedAsideError, putBack, type System, writeWhole } from '../../../src/study/run/whole-folder.js';

let parent = '',
  dir = '';
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'whole-folder-'));
  dir = join(parent, 'out');
});
afterEach(() => {
  rmSync(parent, { recursive: true, force: true });
});

const holding =
  (text: string) =>
  (folder: string): void => {
    writeFileSync(join(folder, 'text'), text);
  };
const textIn = (folder: string): string => readFileSync(join(folder, 'text'), 'utf8');
const names = (): string[] => readdirSync(parent).sort();

/** A process that ran and has ended. */
const ENDED = spawnSync(process.execPath, ['-e', '']).pid;
/** A name as this machine gives it: that of a folder that is being filled, with another process in it. */
function markOf(pid: number): string {
  let name = '';
  writeWhole(join(parent, 'probe'), (folder) => {
    name = folder;
  });
  rmSync(join(parent, 'probe'), { recursive: true });
  return /new-(.*)$/.exec(name)![1].replace(`-${process.pid}-`, `-${pid}-`);
}
function leave(name: string, text: string): void {
  mkdirSync(join(parent, name));
  holding(text)(join(parent, name));
}

/** Renames that fail as told, one entry a call: its code, or none; beyond the list all do their work. */
function failing(platform: NodeJS.Platform, ...codes: readonly (string | undefined)[]) {
  const waits: number[] = [];
  let calls = 0;
  const system: System = {
    platform,
    rename: (from, to) => {
      const code = codes[calls++];
      if (code !== undefined) throw Object.assign(new Error(`${code}: rename`), { code, syscall: 'rename' });
      renameSync(from, to);
    },
    sleep: (ms) => {
      waits.push(ms);
    },
    isAlive: () => false,
  };
  return { system, waits, calls: () => calls };
}

describe('a folder that is written whole', () => {
  it('says in its name while it is filled which process writes it', () => {
    let seen: string[] = [];
    writeWhole(dir, (folder) => {
      holding('one')(folder);
      seen = names();
    });
    expect(seen).toEqual([expect.stringMatching(`^\\.out\\.new-[0-9a-f]{6}-${process.pid}-[0-9a-f]{6}$`)]);
    expect(names()).toEqual(['out']);
    expect(textIn(dir)).toBe('one');
  });

  it('takes the place of another only if asked', () => {
    writeWhole(dir, holding('one'));
    expect(() => {
      writeWhole(dir, holding('two'));
    }).toThrow();
    expect(textIn(dir)).toBe('one');
    writeWhole(dir, holding('two'), { replace: true });
    expect(textIn(dir)).toBe('two');
    expect(names()).toEqual(['out']);
  });
});

describe('a rename that another program stands in the way of', () => {
  it('is tried again on Windows until it passes', () => {
    const { system, waits } = failing('win32', 'EPERM', 'EBUSY', 'EACCES');
    writeWhole(dir, holding('one'), { system });
    expect(textIn(dir)).toBe('one');
    expect(waits).toEqual([20, 50, 100]);
  });

  it('is given up after less than two seconds, with what stood there as it was and nothing left', () => {
    writeWhole(dir, holding('one'));
    const { system, waits } = failing('win32', ...Array.from({ length: 50 }, () => 'EPERM'));
    expect(() => {
      writeWhole(dir, holding('two'), { replace: true, system });
    }).toThrow('EPERM');
    expect(waits).toHaveLength(6);
    expect(waits.reduce((a, b) => a + b)).toBeLessThan(2000);
    expect(textIn(dir)).toBe('one');
    expect(names()).toEqual(['out']);
  });

  it('elsewhere is told at once: there it does not pass', () => {
    const { system, waits } = failing('linux', 'EPERM');
    expect(() => {
      writeWhole(dir, holding('one'), { system });
    }).toThrow('EPERM');
    expect(waits).toEqual([]);
    expect(names()).toEqual([]);
  });

  it('is not tried again where the place is taken', () => {
    writeWhole(dir, holding('one'));
    const { system, waits } = failing('win32', 'EPERM');
    expect(() => {
      writeWhole(dir, holding('two'), { system });
    }).toThrow('EPERM');
    expect(waits).toEqual([]);
    expect(textIn(dir)).toBe('one');
  });

  it('puts the old folder back when the new one cannot take its place', () => {
    writeWhole(dir, holding('one'));
    const { system } = failing('linux', undefined, 'EACCES');
    expect(() => {
      writeWhole(dir, holding('two'), { replace: true, system });
    }).toThrow('EACCES');
    expect(textIn(dir)).toBe('one');
    expect(names()).toEqual(['out']);
  });

  it('says where the old folder is when it cannot be put back, and the next write puts it back', () => {
    writeWhole(dir, holding('one'));
    const { system } = failing('linux', undefined, 'EACCES', 'EACCES');
    let at = '';
    try {
      writeWhole(dir, holding('two'), { replace: true, system });
    } catch (error) {
      expect(error).toBeInstanceOf(MovedAsideError);
      ({ at } = error as MovedAsideError);
    }
    expect(existsSync(dir)).toBe(false);
    expect(textIn(at)).toBe('one');
    expect(putBack(dir)).toBe(true);
    expect(textIn(dir)).toBe('one');
    writeWhole(dir, holding('two'), { replace: true });
    expect(names()).toEqual(['out']);
  });
});

describe('what a killed process left', () => {
  it('half filled, is swept by the next write', () => {
    leave(`.out.new-${markOf(ENDED)}`, 'half');
    writeWhole(dir, holding('one'));
    expect(names()).toEqual(['out']);
  });

  it('between the two renames, is put back, and the new one swept', () => {
    const mark = markOf(ENDED);
    leave(`.out.old-${mark}`, 'one');
    leave(`.out.new-${mark}`, 'two');
    expect(putBack(dir)).toBe(true);
    expect(textIn(dir)).toBe('one');
    expect(putBack(dir)).toBe(false);
    writeWhole(dir, holding('three'), { replace: true });
    expect(textIn(dir)).toBe('three');
    expect(names()).toEqual(['out']);
  });

  it('behind the second rename, is swept once the new one stands', () => {
    leave(`.out.old-${markOf(ENDED)}`, 'one');
    writeWhole(dir, holding('two'));
    // What took its place is gone: the only copy is not removed, nor put where somebody removed another.
    expect(names()).toEqual([expect.stringMatching(/^\.out\.old-/), 'out']);
    expect(putBack(dir)).toBe(false);
    writeWhole(dir, holding('three'), { replace: true });
    expect(names()).toEqual(['out']);
  });

  it('is told from the work of a process that runs, of another target, and of somebody else', () => {
    const others = [
      `.out.new-${markOf(process.ppid)}`,
      `.other.new-${markOf(ENDED)}`,
      '.out.new-notes',
      '.out.old-2027',
    ];
    for (const name of others) leave(name, 'theirs');
    const mark = markOf(process.ppid);
    leave(`.out.old-${mark}`, 'one');
    leave(`.out.new-${mark}`, 'two');
    const before = names();
    expect(putBack(dir)).toBe(false);
    writeWhole(dir, holding('one'));
    expect(names()).toEqual([...before, 'out'].sort());
  });

  it.each([
    ['of another machine', 'ffffff-1-abcdef'],
    ['of version 0.5.0', '0123456789ab'],
  ])('%s, is swept when it is a day old, since nobody can ask whether it is alive', (_, mark) => {
    const name = `.out.new-${mark}`;
    leave(name, 'half');
    writeWhole(dir, holding('one'));
    expect(names()).toEqual([name, 'out']);
    const old = new Date(Date.now() - 25 * 3_600_000);
    utimesSync(join(parent, name), old, old);
    writeWhole(dir, holding('two'), { replace: true });
    expect(names()).toEqual(['out']);
  });
});
