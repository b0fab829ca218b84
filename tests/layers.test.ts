import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles } from './source-files.js';

/**
 * What each layer may import: imports point down only. `x types` grants types alone, `x/room` that folder
 * alone. eslint.config.js says the same for the editor; this test also sees dynamic imports, cycles and stray
 * folders.
 */
const GRANTS: Readonly<Record<string, readonly string[]>> = {
  random: [],
  flow: ['random'],
  measure: ['flow', 'random'],
  scenario: ['flow/model', 'random'],
  records: ['scenario', 'flow/model', 'random'],
  study: ['records', 'scenario', 'measure', 'flow', 'random'],
  report: ['study', 'records types', 'measure types', 'scenario types'],
  cli: ['report', 'study', 'records', 'measure', 'flow', 'random', 'scenario'],
  live: ['report', 'study', 'records', 'measure', 'flow', 'random', 'scenario'],
};
const PURE = ['random', 'flow', 'measure', 'records'];

const layerOf = (file: string): string => file.split('/')[0];

function granted(layer: string, target: string, typeOnly: boolean): boolean {
  return (GRANTS[layer] ?? []).some(
    (grant) =>
      grant === layerOf(target) ||
      target.startsWith(`${grant}/`) ||
      (typeOnly && grant === `${layerOf(target)} types`),
  );
}

/** What is wrong with the imports of one file, its path given relative to src/ with forward slashes. */
function faultsOf(file: string, text: string): string[] {
  const layer = layerOf(file);
  if (!file.includes('/') || !(layer in GRANTS))
    return [`${file}: expected one of the folders ${Object.keys(GRANTS).join(', ')}`];
  return importsOf(text).flatMap(({ specifier, typeOnly }) => {
    if (!specifier.startsWith('.')) {
      const foreign = isBuiltin(specifier) || specifier === '(computed)';
      return foreign && PURE.includes(layer)
        ? [`${file}: ${layer} is pure and may not import ${specifier}`]
        : [];
    }
    const target = posix.join(posix.dirname(file), specifier);
    if (layerOf(target) === layer || granted(layer, target, typeOnly)) return [];
    return [`${file}: ${layer} may not import ${target}`];
  });
}

/**
 * A ring of layers that import one another (types too), first layer repeated at the end; undefined when there
 * is none.
 */
function layerRing(files: ReadonlyMap<string, string>): string[] | undefined {
  const edges = new Map<string, Set<string>>();
  for (const [file, text] of files) {
    const from = layerOf(file);
    for (const { specifier } of importsOf(text)) {
      if (!specifier.startsWith('.')) continue;
      const to = layerOf(posix.join(posix.dirname(file), specifier));
      if (to !== from) edges.set(from, (edges.get(from) ?? new Set()).add(to));
    }
  }
  const follow = (path: string[]): string[] | undefined => {
    for (const next of edges.get(path.at(-1)!) ?? []) {
      const seen = path.indexOf(next);
      const ring = seen >= 0 ? [...path.slice(seen), next] : follow([...path, next]);
      if (ring) return ring;
    }
    return undefined;
  };
  return [...edges.keys()].map((start) => follow([start])).find((ring) => ring !== undefined);
}

describe('layers of src/', () => {
  const files = sourceFiles();

  it('every file sits in a known layer and imports only what that layer may', () => {
    expect(files.size).toBeGreaterThan(3);
    expect([...files].flatMap(([file, text]) => faultsOf(file, text))).toEqual([]);
  });

  it('no layers import one another in a ring', () => {
    expect(layerRing(files)).toBeUndefined();
  });
});

describe('the layer check on made-up files', () => {
  it.each([
    ['an upward import', 'flow/run.ts', `import { study } from '../study/study.js';`],
    [
      'an upward import from a deeper folder',
      'flow/steps/run.ts',
      `import { study } from '../../study/study.js';`,
    ],
    ['an upward import of a type', 'measure/tally.ts', `import type { Results } from '../study/results.js';`],
    ['an upward import inside a type', 'measure/tally.ts', `let r: import('../study/results.js').Results;`],
    ['an upward dynamic import', 'study/run.ts', `const chart = await import('../report/chart.js');`],
    ['an upward re-export', 'study/run.ts', `export * from '../report/chart.js';`],
    ['any import of the commands', 'report/page.ts', `import '../cli/main.js';`],
    ['the engine from the scenario layer', 'scenario/compile.ts', `import { run } from '../flow/run.js';`],
    ['a value of measure in a report', 'report/table.ts', `import { mean } from '../measure/mean.js';`],
    ['a Node module in the engine', 'flow/run.ts', `import { readFileSync } from 'node:fs';`],
    ['a Node module by its short name', 'random/seed.ts', `import { randomBytes } from 'crypto';`],
    ['a folder that is no layer', 'helpers/list.ts', ''],
    ['a file outside every folder', 'index.ts', ''],
  ])('refuses %s', (_, file, text) => {
    expect(faultsOf(file, text)).toHaveLength(1);
  });

  it.each([
    ['a downward import', 'study/run.ts', `import { run } from '../flow/run.js';`],
    ['a neighbour', 'flow/run.ts', `import { heap } from './heap.js';`],
    [
      'the compiled model from the scenario layer',
      'scenario/compile.ts',
      `import { Model } from '../flow/model/model.js';`,
    ],
    ['a type of measure in a report', 'report/table.ts', `import type { Tally } from '../measure/tally.js';`],
    ['a Node module outside the pure layers', 'report/table.ts', `import { writeFileSync } from 'node:fs';`],
    [
      'an import that is only text',
      'flow/run.ts',
      `// import '../cli/main.js'\nconst a = "import '../cli/main.js'";`,
    ],
  ])('lets pass %s', (_, file, text) => {
    expect(faultsOf(file, text)).toEqual([]);
  });

  it('finds a ring of three layers and names it in order', () => {
    const ring = layerRing(
      new Map([
        ['flow/a.ts', `import '../random/a.js';`],
        ['random/a.ts', `import type { B } from '../measure/b.js';`],
        ['measure/b.ts', `import '../flow/a.js';`],
      ]),
    );
    expect(ring).toEqual(['flow', 'random', 'measure', 'flow']);
  });
});
