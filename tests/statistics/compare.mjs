// Many small comparisons with the built engine, in a process of its own (see replicate.mjs). In: { yaml, whatIfs, studies,
// replications } as JSON; out: for each study what was found of the mean lead time of each what-if, as JSON.
import { Buffer } from 'node:buffer';
import { readFileSync, writeSync } from 'node:fs';
import { compareDesign, observe, prepare, readScenario, readWhatIfs, simulate, tuneFor } from '../../dist/study/library.js';

const { yaml, whatIfs: text, studies, replications } = JSON.parse(readFileSync(0, 'utf8'));
const { scenario } = readScenario(yaml, 'check.yaml', () => '');
const { whatIfs, problems } = readWhatIfs(text, 'what-ifs.yaml', { text: yaml, file: 'check.yaml' }, () => '');
if (problems !== undefined) throw new Error(`expected what-ifs without problems, saw ${JSON.stringify(problems)}`);
const design = compareDesign({ scenario, file: 'check.yaml', whatIfs, whatIfsFile: 'what-ifs.yaml', replications, seed: 'of each study', level: 0.95 });
tuneFor(design.variants[0].model);
const plans = design.variants.map(({ model }) => prepare(model));
const found = Array.from({ length: studies }, (_, s) => {
  const seed = `study ${s}`, gathering = design.gather();
  design.variants.forEach(({ read }, v) => {
    for (let r = 1; r <= replications; r++) gathering.take(read(observe(simulate(plans[v], seed, r), r)), v);
  });
  const { whatIfs: results } = gathering.found();
  return results.map(({ compared }) => compared.find(({ measure }) => measure === 'lead mean'));
});
const bytes = Buffer.from(JSON.stringify(found));
for (let written = 0; written < bytes.length;) written += writeSync(1, bytes, written);
