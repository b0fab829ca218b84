// Fetches the versions of Node that are supported into out/nodes, for the tests that compare bits: the packages in which
// the npm package `node` brings them, without its script. 180 MB each, so `npm ci` leaves them out.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const VERSIONS = ['20', '22', '24'],
  SYSTEM = `${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;

for (const version of VERSIONS) {
  const folder = join(import.meta.dirname, '../out/nodes', version);
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}/package.json`, '{ "private": true }\n');
  const { status } = spawnSync(
    'npm',
    ['install', '--no-save', '--no-audit', '--no-fund', '--ignore-scripts', `node-${SYSTEM}@${version}`],
    { cwd: folder, stdio: 'inherit', shell: process.platform === 'win32' },
  );
  if (status !== 0) process.exitCode = 1;
}
