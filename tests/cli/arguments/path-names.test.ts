import { describe, expect, it } from 'vitest';
import { pathTrouble } from '../../../src/cli/arguments/path-names.js';
import { pathOn } from '../../../src/cli/arguments/readers.js';

const SYSTEMS = ['win32', 'linux', 'darwin'] as const;

describe('a path to be written', () => {
  it.each([
    'con',
    'out/aux.yaml',
    'NUL',
    'nul.tar.gz',
    'Com1',
    'lpt9.txt',
    'com¹',
    'out\\PRN',
    'CONOUT$',
    'con .txt',
  ])('may not have the name of a device on Windows alone: %s', (path) => {
    expect(pathTrouble(path, 'win32')?.wanted).toBe('a name that Windows does not keep for a device');
    for (const platform of ['linux', 'darwin'] as const) expect(pathTrouble(path, platform)).toBeUndefined();
  });

  it.each(['a:b', 'out/a?', 'a*', 'x<y', 'x>y', 'say "x"', 'a|b', 'C:\\plans\\a:b', 'tab\there'])(
    'may not have a letter that Windows forbids, on Windows alone: %s',
    (path) => {
      expect(pathTrouble(path, 'win32')?.wanted).toBe('names without < > : " | ? * and controls, on Windows');
      expect(pathTrouble(path, 'linux')).toBeUndefined();
    },
  );

  it.each(['out.', 'out ', 'a /b', 'a.\\b', '...'])(
    'may not end in a dot or a space on Windows: "%s"',
    (path) => {
      expect(pathTrouble(path, 'win32')?.wanted).toMatch(/^names that end in neither a dot nor a space/);
      expect(pathTrouble(path, 'darwin')).toBeUndefined();
    },
  );

  it.each([
    'out/line',
    '.',
    '..\\x',
    './x',
    'C:\\plans\\line',

    '\\\\server\\share\\x',
    'console',
    'com10',
    'a.con',
    '线 1',
  ])('is taken on every system: %s', (path) => {
    for (const platform of SYSTEMS) expect(pathTrouble(path, platform)).toBeUndefined();
  });

  it('has room for what is written beside it, in bytes', () => {
    for (const platform of SYSTEMS) {
      expect(pathTrouble(`out/${'x'.repeat(200)}`, platform)).toBeUndefined();
      expect(pathTrouble(`out/${'x'.repeat(201)}`, platform)?.got).toBe('one of 201');
      expect(pathTrouble('线'.repeat(67), platform)?.got).toBe('one of 201');
    }
    expect(pathTrouble(`${'x'.repeat(256)}\\y`, 'win32')?.wanted).toMatch(/^names of at most 255 letters/);
  });

  it('is told with its option and what to do', () => {
    expect(() => pathOn('win32')('out/con', '--out')).toThrow(
      expect.objectContaining({
        message: '--out: expected a name that Windows does not keep for a device, got "con"',
        hint: 'choose another name, for example --out out/line',
      }),
    );
    expect(pathOn('linux')('out/con', '--out')).toBe('out/con');
    expect(() => pathOn('linux')('', '--out')).toThrow('--out: expected a path, got none');
  });
});
