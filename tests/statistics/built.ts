import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Observation } from '../../src/measure/observe.js';
import type { CompareResults } from '../../src/study/compare/results.js';
import type { Zones } from '../../src/study/compare/zones.js';
import type { FactorsResults } from '../../src/study/factors/results.js';
import type { FixedDesign } from '../../src/study/run/fixed-design.js';

const root = fileURLToPath(new URL('../..', import.meta.url)),
  BUILT = 'dist/study/library.js';
const LAYERS = ['random', 'flow', 'measure', 'scenario', 'study'];

expectFresh();
/**
 * The program as built. The test runner leaves it as it is (vitest.config.ts); it wraps every import of a
 * module that it transforms, which makes the inner loop five times slower.
 */
export const built = (await import(
  new URL(`../../${BUILT}`, import.meta.url).href
)) as typeof import('../../src/study/library.js');

/** An old build would check an engine that is no longer there. */
function expectFresh(): void {
  const builtAt = statSync(join(root, BUILT), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  for (const layer of LAYERS) {
    for (const file of readdirSync(join(root, 'src', layer), { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.ts') && !name.endsWith('.d.ts'),
    )) {
      const source = join('src', layer, file);
      if (builtAt < statSync(join(root, source)).mtimeMs)
        throw new Error(
          `${BUILT}: expected a build newer than ${source}, got an older one or none; run \`npm run build\` first`,
        );
    }
  }
}

/** The scenario of a text that must be free of problems. */
export function scenarioBuilt(yaml: string) {
  const { scenario, problems } = built.readScenario(yaml, 'check.yaml', () => '');
  if (scenario === undefined)
    throw new Error(`expected a scenario without problems, got ${JSON.stringify(problems)}`);
  return scenario;
}

/** What is read of replications 1, 2, .. of a scenario text. */
export function replicateBuilt<Value>(
  yaml: string,
  replications: number,
  seed: string,
  read: (observation: Observation) => Value,
): Value[] {
  const model = built.compile(scenarioBuilt(yaml));
  built.tuneFor(model); // as every study does
  const plan = built.prepare(model);
  return Array.from({ length: replications }, (_, i) =>
    read(built.observe(built.simulate(plan, seed, i + 1), i + 1)),
  );
}

/** What comparisons of ten or so replications, each with a seed of its own, say: by study. */
export function comparedBuilt(
  yaml: string,
  whatIfsText: string,
  studies: number,
  replications: number,
  zones?: Zones,
): CompareResults[] {
  const scenario = scenarioBuilt(yaml),
    { whatIfs, problems } = built.readWhatIfs(
      whatIfsText,
      'what-ifs.yaml',
      { text: yaml, file: 'check.yaml' },
      () => '',
    );
  if (whatIfs === undefined)
    throw new Error(`expected what-ifs without problems, got ${JSON.stringify(problems)}`);
  const design = built.compareDesign({
    scenario,
    file: 'check.yaml',
    whatIfs,
    whatIfsFile: 'what-ifs.yaml',
    replications,
    seed: 'of each study',
    level: 0.95,
    zones,
  });
  return studiedBuilt(design, studies, replications);
}

/** The same of experiments with factors. */
export function factorsBuilt(
  yaml: string,
  factorsText: string,
  studies: number,
  replications: number,
  zones?: Zones,
): FactorsResults[] {
  const { factors, problems } = built.readFactors(
    factorsText,
    'factors.yaml',
    { text: yaml, file: 'check.yaml' },
    () => '',
  );
  if (factors === undefined)
    throw new Error(`expected factors without problems, got ${JSON.stringify(problems)}`);
  const design = built.factorsDesign({
    ...factors,
    scenario: scenarioBuilt(yaml),
    file: 'check.yaml',
    factorsFile: 'factors.yaml',
    replications,
    seed: 'of each study',
    level: 0.95,
    zones,
  });
  return studiedBuilt(design, studies, replications);
}

/** What a design finds with each of so many seeds. */
function studiedBuilt<Value, Found>(
  design: FixedDesign<Value, { readonly results: Found }>,
  studies: number,
  replications: number,
): Found[] {
  const plans = design.variants.map(({ model }) => built.prepare(model));
  return Array.from({ length: studies }, (_, s) => {
    const gathering = design.gather();
    design.variants.forEach(({ read }, v) => {
      for (let r = 1; r <= replications; r++)
        gathering.take(read(built.observe(built.simulate(plans[v], `study ${s}`, r), r)), v);
    });
    return gathering.found().results;
  });
}
