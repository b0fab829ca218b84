// Large scenarios: `check`, and with `--simulate` the first replication too, at n things of each sort and at four
// times as many. What grows much faster than what is asked is told, and ends with 1.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SHAPES } from './large-shapes.mjs';

const MAIN = join(import.meta.dirname, '../dist/cli/main.js');
/** Of four times as much; 4 is linear, 16 the square. Below a second the start counts for too much to say. */
const MOST = 9,
  LEAST_SECONDS = 1;
/** Fewer of these: values of an option have pairs, files at most 100, shifts a day. */
const SHARE = { 'values of an option': 0.2, includes: 0.024, 'shifts of a crew': 0.3, 'observed times': 250 };
/** Streams of what is sent back from each step to the first: the square is in the question. */
const SQUARE = new Set(['tests that send back to the first']);

const isSimulated = process.argv.includes('--simulate'),
  n = Number(process.argv.find((word) => /^\d+$/.test(word)) ?? 1000),
  only = process.argv.find((word, i) => i > 1 && !/^\d+$|^--/.test(word)) ?? '';

/** Seconds of one run, and what it said last if it did not end well. */
function secondsOf(shape, count, folder) {
  const made = SHAPES[shape](count),
    files = typeof made === 'string' ? { 'main.yaml': made } : made,
    file = join(folder, 'main.yaml');
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const words = isSimulated
    ? ['simulate', file, '--replications', '1', '--workers', '1', '--quiet', '--json', '--finding-ok']
    : ['check', file, '--json'];
  const before = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [MAIN, ...words], {
    encoding: 'utf8',
    maxBuffer: 2 ** 30,
  });
  return { seconds: (performance.now() - before) / 1000, status, said: stderr.split('\n')[0] };
}

const folder = mkdtempSync(join(tmpdir(), 'rateproof-large-'));
let isSlow = false;
try {
  for (const shape of Object.keys(SHAPES).filter((name) => name.includes(only))) {
    const count = Math.max(2, Math.round(n * (SHARE[shape] ?? 1))),
      small = secondsOf(shape, count, folder),
      large = secondsOf(shape, 4 * count, folder),
      ratio = large.seconds / small.seconds,
      slow = large.seconds > LEAST_SECONDS && ratio > MOST && !SQUARE.has(shape);
    isSlow ||= slow;
    console.log(
      `${shape.padEnd(36)} ${String(count).padStart(7)} ${small.seconds.toFixed(2).padStart(7)} s ` +
        `${String(4 * count).padStart(7)} ${large.seconds.toFixed(2).padStart(7)} s  ` +
        `${large.status === 0 ? '' : large.said.slice(-90)}${slow ? 'SLOW' : ''}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = isSlow ? 1 : 0;
