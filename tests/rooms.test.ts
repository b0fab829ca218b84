import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importedFiles, sourceFiles } from './source-files.js';

const MOST_LINES = 200,
  MOST_COLUMNS = 110;

const files = sourceFiles();
const inEngine = (file: string): boolean => file.startsWith('flow/');

/** Circles of files that import one another: the strongly connected parts (Tarjan 1972, SIAM J. Comput. 1). */
function circles(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>(),
    open: string[] = [],
    found: string[][] = [];
  const visit = (file: string): number => {
    const own = order.size;
    let low = own;
    order.set(file, own);
    open.push(file);
    for (const next of imports.get(file) ?? []) {
      if (!order.has(next)) low = Math.min(low, visit(next));
      else if (open.includes(next)) low = Math.min(low, order.get(next) ?? own);
    }
    if (low === own) {
      const part = open.splice(open.indexOf(file));
      if (part.length > 1) found.push(part.sort());
    }
    return low;
  };
  for (const file of imports.keys()) if (!order.has(file)) visit(file);
  return found;
}

const importsIn = (which: (file: string) => boolean, withTypes: boolean): Map<string, string[]> =>
  new Map(
    [...files]
      .filter(([file]) => which(file))
      .map(([file, text]) => [file, importedFiles(file, text, withTypes).filter(which)]),
  );

describe('rooms of src/', () => {
  it('no circle of files outside the engine, types included', () => {
    expect(circles(importsIn((file) => !inEngine(file), true))).toEqual([]);
  });

  it('no circle of files in the engine at run time', () => {
    expect(circles(importsIn(inEngine, false))).toEqual([]);
  });

  it('every import of a file leads to a file', () => {
    const missing = [...files].flatMap(([file, text]) =>
      importedFiles(file, text, true)
        .filter((target) => !files.has(target) && !files.has(target.replace(/\.ts$/, '.d.ts')))
        .map((target) => `${file}: ${target}`),
    );
    expect(missing).toEqual([]);
  });

  it(`no file has more than ${MOST_LINES} lines, no line more than ${MOST_COLUMNS} characters`, () => {
    const faults = [...files].flatMap(([file, text]) => {
      const lines = text.split('\n');
      return [
        ...(lines.length - 1 > MOST_LINES ? [`${file}: ${lines.length - 1} lines`] : []),
        ...lines.flatMap((line, i) =>
          line.length > MOST_COLUMNS ? [`${file}:${i + 1}: ${line.length} characters`] : [],
        ),
      ];
    });
    expect(faults).toEqual([]);
  });

  it('a folder has 4 to 15 files and lies at most two levels below its layer', () => {
    const counts = new Map<string, number>();
    for (const file of files.keys()) {
      const folder = posix.dirname(file);
      counts.set(folder, (counts.get(folder) ?? 0) + 1);
    }
    const faults = [...counts].filter(([folder, n]) => n < 4 || n > 15 || folder.split('/').length > 3);
    expect(faults).toEqual([]);
  });
});

describe('the check of circles on made-up imports', () => {
  it('finds two circles that share no file, and not the file that hangs on one', () => {
    const imports = new Map([
      ['a', ['b']],
      ['b', ['c']],
      ['c', ['a']],
      ['d', ['e', 'a']],
      ['e', ['d']],
      ['f', ['d']],
    ]);
    expect(circles(imports)).toEqual([
      ['a', 'b', 'c'],
      ['d', 'e'],
    ]);
  });

  it('finds none in a diamond', () => {
    const imports = new Map([
      ['a', ['b', 'c']],
      ['b', ['d']],
      ['c', ['d']],
      ['d', []],
    ]);
    expect(circles(imports)).toEqual([]);
  });
});
