import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkFolder, FolderError, writeFolder } from '../../../src/report/files/folder/folder.js';

const report = (text: string) =>
  new Map<string, string | Buffer>([
    ['results.json', JSON.stringify({ format: 'rateproof results', text })],
    ['01-chart.png', Buffer.from([137, 80])],
  ]);
/** A file that cannot be written: the disk's failure, played by content of a wrong type. */
const broken = new Map<string, string | Buffer>([
  ['results.json', '{}'],
  ['report.html', Symbol('no content') as unknown as string],
]);

let parent = '',
  dir = '';
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'folder-test-'));
  dir = join(parent, 'out');
});
afterEach(() => {
  rmSync(parent, { recursive: true, force: true });
});
const textOf = (): unknown =>
  (JSON.parse(readFileSync(join(dir, 'results.json'), 'utf8')) as { text: unknown }).text;

describe('writing a report folder', () => {
  it('writes every file and leaves nothing beside it', () => {
    writeFolder(dir, report('one'));
    expect(readdirSync(parent)).toEqual(['out']);
    expect(readdirSync(dir).sort()).toEqual(['01-chart.png', 'results.json']);
    expect([...readFileSync(join(dir, '01-chart.png'))]).toEqual([137, 80]);
  });

  it('makes missing parent folders', () => {
    dir = join(parent, 'a', 'b');
    writeFolder(dir, report('deep'));
    expect(textOf()).toBe('deep');
  });

  it('leaves nothing half-written when a file fails', () => {
    expect(() => {
      writeFolder(dir, broken);
    }).toThrow();
    expect(readdirSync(parent)).toEqual([]);
  });

  it('refuses an existing folder and leaves it as it was', () => {
    writeFolder(dir, report('one'));
    expect(() => {
      writeFolder(dir, report('two'));
    }).toThrow(FolderError);
    expect(() => {
      writeFolder(dir, report('two'));
    }).toThrow('expected a name not taken yet, got an existing folder');
    expect(textOf()).toBe('one');
  });

  it('refuses names that would leave the folder', () => {
    expect(() => {
      writeFolder(dir, new Map([['../results.json', '']]));
    }).toThrow(
      'name of a report file: expected letters, digits, - and _, and .png, .svg, .html, .csv, .json or .xlsx, got "../results.json"',
    );
    expect(readdirSync(parent)).toEqual([]);
  });
});

describe('replacing a report folder', () => {
  it('puts the new report in the place of the old one', () => {
    writeFolder(dir, new Map([...report('one'), ['old.csv', '']]));
    writeFolder(dir, report('two'), { replace: true });
    expect(textOf()).toBe('two');
    expect(readdirSync(dir).sort()).toEqual(['01-chart.png', 'results.json']);
    expect(readdirSync(parent)).toEqual(['out']);
  });

  it('keeps the old report when the new one fails', () => {
    writeFolder(dir, report('one'));
    expect(() => {
      writeFolder(dir, broken, { replace: true });
    }).toThrow();
    expect(textOf()).toBe('one');
    expect(readdirSync(parent)).toEqual(['out']);
  });

  it.each([
    [
      'a folder without results',
      () => {
        mkdirSync(dir);
        writeFileSync(join(dir, 'letter.txt'), 'dear');
      },
      'got one without a results.json that says so',
    ],
    [
      'a folder with the results of something else',
      () => {
        mkdirSync(dir);
        writeFileSync(join(dir, 'results.json'), '{"format":"races"}');
      },
      'got one without a results.json that says so',
    ],
    [
      'a report in which somebody keeps a file',
      () => {
        writeFolder(dir, report('one'));
        writeFileSync(join(dir, 'notes.docx'), 'mine');
      },
      'expected nothing but a report, got notes.docx beside it',
    ],
    [
      'a report in which somebody keeps a folder',
      () => {
        writeFolder(dir, report('one'));
        mkdirSync(join(dir, 'photos'));
      },
      'expected nothing but a report, got photos beside it',
    ],
    [
      'a file',
      () => {
        writeFileSync(dir, 'text');
      },
      'got a file or a link',
    ],
    [
      'a link to a report',
      () => {
        writeFolder(join(parent, 'real'), report('one'));
        // A junction needs no right of its own on Windows.
        symlinkSync(join(parent, 'real'), dir, 'junction');
      },
      'got a file or a link',
    ],
  ])('does not remove %s', (_, prepare, message) => {
    prepare();
    const before = readdirSync(parent, { recursive: true }).sort();
    expect(() => {
      writeFolder(dir, report('two'), { replace: true });
    }).toThrow(message);
    expect(readdirSync(parent, { recursive: true }).sort()).toEqual(before);
    expect(existsSync(dir)).toBe(true);
  });
});

describe('a run that was killed while it replaced a report', () => {
  /** Leaves the folders as they are between the two renames. */
  function killedBetween(): void {
    writeFolder(dir, report('one'));
    let calls = 0;
    const system = {
      platform: 'linux' as const,
      rename: (from: string, to: string) => {
        if (++calls > 1) throw Object.assign(new Error('EIO: rename'), { code: 'EIO', syscall: 'rename' });
        renameSync(from, to);
      },
      sleep: () => undefined,
      isAlive: () => false,
    };
    expect(() => {
      writeFolder(dir, report('two'), { replace: true, system });
    }).toThrow(
      /out: expected to be able to put the new report there, got a folder that is in use; the report that stood there is now .*\.out\.old-/,
    );
    expect(readdirSync(parent).sort()).toEqual([
      expect.stringMatching(/^\.out\.new-/),
      expect.stringMatching(/^\.out\.old-/),
    ]);
  }

  it('has lost none: it is back when the next one asks for its place, which is told', () => {
    killedBetween();
    expect(() => checkFolder(dir)).toThrow(
      'got an existing folder, which a run that was killed had moved aside and which is back in its place',
    );
    expect(textOf()).toBe('one');
    expect(() => checkFolder(dir)).toThrow(/got an existing folder$/);
  });

  it('goes on with the same command, which leaves nothing beside the new report', () => {
    killedBetween();
    expect(checkFolder(dir, { replace: true })).toBe('report');
    writeFolder(dir, report('three'), { replace: true });
    expect(textOf()).toBe('three');
    expect(readdirSync(parent)).toEqual(['out']);
  });
});
