import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { removeJournal } from '../../src/cli/journal.js';
import { writeReport } from '../../src/cli/report-folder.js';
import { systemReason, type UsageError } from '../../src/cli/usage-error.js';

const parent = mkdtempSync(join(tmpdir(), 'report-folder-'));
afterAll(() => {
  rmSync(parent, { recursive: true, force: true });
});

const fault = (code: string, syscall = 'rename'): Error =>
  Object.assign(new Error(`${code}: ${syscall}`), { code, syscall });
const report = (text: string) =>
  new Map([['results.json', JSON.stringify({ format: 'rateproof results', text })]]);

describe('a report that is open in another program', () => {
  const written = (code: string, platform: NodeJS.Platform): UsageError => {
    const out = join(parent, `${platform}-${code}`);
    writeReport(out, report('one'), false);
    const system = {
      platform,
      rename: () => {
        throw fault(code);
      },
      sleep: () => undefined,
      isAlive: () => true,
    };
    try {
      writeReport(out, report('two'), true, system);
    } catch (error) {
      expect(readFileSync(join(out, 'results.json'), 'utf8')).toContain('"one"');
      expect(readdirSync(parent).filter((name) => name.startsWith('.'))).toEqual([]);
      return error as UsageError;
    }
    throw new Error('expected it to be refused');
  };

  it.each(['EPERM', 'EACCES'])('is told on Windows, where that is %s, with what to do', (code) => {
    const { message, hint } = written(code, 'win32');
    expect(message).toMatch(
      /^expected to be able to write .*, got no permission, or one that another program has open$/,
    );
    expect(hint).toBe(
      'close what has it open and give the same command again, or choose another place with --out; ' +
        'what stood there is as it was',
    );
  });

  it.each(['win32', 'linux', 'darwin'] as const)('is told on %s, where that is EBUSY', (platform) => {
    const { message, hint } = written('EBUSY', platform);
    expect(message).toMatch(/, got one that another program has open$/);
    expect(hint).toMatch(/^close what has it open and give the same command again/);
  });

  it('is not what EPERM means elsewhere', () => {
    const { message, hint } = written('EPERM', 'linux');
    expect(message).toMatch(/, got no permission$/);
    expect(hint).toBe('choose another place with --out');
    expect(systemReason(fault('ENOSPC', 'write'), 'win32')).toBe('no space left');
  });
});

describe('a journal that another program has open when all is done', () => {
  it('is told of, and is no fault', () => {
    const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    try {
      removeJournal('out.journal', () => {
        throw fault('EBUSY', 'unlink');
      });
      expect(told).toHaveBeenCalledExactlyOnceWith(
        'expected to be able to remove out.journal, got one that another program has open; ' +
          'it is not needed any more, delete it yourself\n',
      );
      expect(() => {
        removeJournal('out.journal', () => {
          throw new TypeError('a slip');
        });
      }).toThrow('a slip');
    } finally {
      told.mockRestore();
    }
  });
});
