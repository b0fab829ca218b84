import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize } from 'node:v8';
import type { Observation } from '../../src/measure/observation.js';
import type { ComparedMeasure } from '../../src/study/results-compare.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const LAYERS = ['random', 'flow', 'measure', 'scenario'];

/** Looked at once in a test file. */
let isFresh = false;

/** Observations of replications 1, 2, .. of a scenario text, by the built engine; see `replicate.mjs`. */
export function replicateBuilt(yaml: string, replications: number, seed: string): Observation[] {
  if (!isFresh) expectFresh();
  isFresh = true;
  const input = JSON.stringify({ yaml, replications, seed });
  const bytes = execFileSync(process.execPath, [fileURLToPath(new URL('replicate.mjs', import.meta.url))], { input, maxBuffer: 2 ** 30 });
  return deserialize(bytes) as Observation[];
}

/** An old build would check an engine that is no longer there. */
export function expectFresh(): void {
  const built = 'dist/study/library.js', builtAt = statSync(join(root, built), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  for (const layer of LAYERS) {
    for (const file of readdirSync(join(root, 'src', layer)).filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))) {
      const source = join('src', layer, file);
      if (builtAt < statSync(join(root, source)).mtimeMs) throw new Error(`${built}: expected a build newer than ${source}, saw an older one or none; run \`npm run build\` first`);
    }
  }
}

/** What comparisons of the built program, each with a seed of its own, say of the mean lead time: by study and what-if; see `compare.mjs`. */
export function comparedBuilt(yaml: string, whatIfs: string, studies: number, replications: number): ComparedMeasure[][] {
  expectFresh();
  const input = JSON.stringify({ yaml, whatIfs, studies, replications });
  const bytes = execFileSync(process.execPath, [fileURLToPath(new URL('compare.mjs', import.meta.url))], { input, maxBuffer: 2 ** 28 });
  return JSON.parse(bytes.toString()) as ComparedMeasure[][];
}
