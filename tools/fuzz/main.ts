// `npm run fuzz -- --minutes 30 --seed N`, in the root of the repository: tries the program with what nobody should give it.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { KINDS } from '../../tests/fuzz/all-kinds.js';
import { type Fault, noCounts, tryBatch } from '../../tests/fuzz/batch.js';
import { Reader } from '../../tests/fuzz/reader.js';
import { countsTable } from './table.js';

const USAGE = `npm run fuzz -- [--minutes 30 | --batches 20] [--seed 1] [--only KIND,KIND]
--batches: so many of each kind, however long they take: the same cases for the same seed
kinds: ${KINDS.map(({ name }) => name).join(', ')}`;
const FOLDER = 'out/fuzz';

// What is asked wrongly is said in a line.
process.on('uncaughtException', (error) => {
  process.stderr.write(`${error.message}\n${USAGE}\n`);
  process.exit(2);
});

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '30' },
    batches: { type: 'string' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
  },
});
const minutes = Number(values.minutes),
  batches = values.batches === undefined ? Infinity : Number(values.batches),
  only = values.only?.split(',') ?? KINDS.map(({ name }) => name),
  kinds = KINDS.filter(({ name }) => only.includes(name));
if (!(minutes > 0) || !(batches > 0) || kinds.length !== only.length) {
  throw new Error('expected numbers above 0 and kinds that there are');
}
const end = values.batches === undefined ? Date.now() + minutes * 60_000 : Infinity;

const reader = new Reader(),
  known = new Set<string>(),
  faults: Fault[] = [],
  all = kinds.map((kind) => ({ kind, counts: noCounts(), batch: 0, spentMs: 0 }));

for (;;) {
  // The kind that had least of the time is next, so that none is kept waiting by slow ones.
  const [next] = all.filter(({ batch }) => batch < batches).sort((a, b) => a.spentMs - b.spentMs);
  if (next === undefined || Date.now() > end) break;
  const begun = Date.now(),
    asked = { seed: values.seed, batch: next.batch++ },
    fault = await tryBatch(next.kind, asked, { reader, counts: next.counts, known });
  next.spentMs += Date.now() - begun;
  if (fault !== undefined) keep(fault);
}
reader.close();

process.stdout.write(
  `\nseed ${values.seed}\n${countsTable(all.map(({ kind: { name }, counts }) => [name, counts]))}\n`,
);
for (const fault of faults) process.stdout.write(`\n${nameOf(fault)}\n${fault.why.slice(0, 1500)}\n`);
process.exitCode = faults.length > 0 ? 1 : 0;

/** What makes it again, and where fast-check found it. */
function nameOf({ kind, batch, seed, path }: Fault): string {
  return `--seed ${values.seed} --only "${kind}" --batches ${batch + 1}, the last of them; seed ${seed}, path ${path}`;
}

function keep(fault: Fault): void {
  faults.push(fault);
  const folder = join(FOLDER, `${fault.kind.replaceAll(' ', '-')}-${faults.length}`);
  for (const [name, content] of Object.entries({
    ...fault.shown,
    'fault.txt': `${nameOf(fault)}\n\n${fault.why}\n`,
  })) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  process.stderr.write(`${folder}: ${fault.why.slice(0, 300)}\n`);
}
