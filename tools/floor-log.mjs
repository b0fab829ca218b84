// The invented floor log of the demo: `npm run demo:log`. Beside it stands the scenario that makes it.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'rateproof-floor-')),
  whole = join(folder, 'whole.csv'),
  made = process.argv[2] ?? 'scenarios/data/floor-invented.csv';

/** As a tracking system may write it: to the second, without stations and carriers. */
const asTracked = (line) => {
  const [at, kind, object, type, step, , others, ...values] = line.split(',');
  return [
    at.replace(/\.\d+/, ''),
    kind,
    object,
    type,
    step,
    others.replace(/^carrier:.*$/, ''),
    ...values,
  ].join(',');
};

try {
  execFileSync(process.execPath, [
    'dist/cli/main.js',
    ...['simulate', 'scenarios/data/floor-invented.yaml', '--include-from', 'scenarios'],
    ...['--seed', 'floor', '--replications', '2', '--trace', whole, '--finding-ok', '--quiet'],
  ]);
  writeFileSync(
    made,
    readFileSync(whole, 'utf8')
      .split('\n')
      .map((line) => (line === '' ? '' : asTracked(line)))
      .join('\n'),
  );
} finally {
  rmSync(folder, { recursive: true });
}
