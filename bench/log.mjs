// Reading of a made floor log of 5 million rows, rows a second and the most memory: `npm run bench:log`. A
// thousand units are inside at once, each goes through 60 steps; every number is invented.

import { once } from 'node:events';
import { createReadStream, createWriteStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readLog } from '../dist/study/library.js';

const ROWS = Number(process.argv[2] ?? 5_000_000),
  STEPS = 60,
  INSIDE = 1000,
  FIRST = Date.UTC(2027, 0, 4, 6),
  folder = mkdtempSync(join(tmpdir(), 'rateproof-log-')),
  file = join(folder, 'log.csv');

/** Rows in order of time: each turn, every unit inside comes to a step, or begins or ends it. */
async function make() {
  const out = createWriteStream(file);
  out.write('at,event,object,type,step,station,others,values\n');
  let rows = 0;
  for (let turn = 0; rows < ROWS; turn++) {
    let text = '';
    for (let place = 0; place < INSIDE && rows < ROWS; place++, rows++) {
      const phase = (turn + place) % (3 * STEPS + 2),
        unit = place + INSIDE * Math.floor((turn + place) / (3 * STEPS + 2)),
        at = new Date(FIRST + turn * 600_000 + place * 500).toISOString().replace('.000Z', '+00:00'),
        step = `step ${Math.floor((phase - 1) / 3)} of the line`,
        station = `station ${Math.floor((phase - 1) / 3)}`,
        kind = ['arrive', 'start', 'end'][(phase + 2) % 3];
      if (phase === 0) text += `${at},enter,RT-${unit},unit,,,,cab=long;colour=red\n`;
      else if (phase === 3 * STEPS + 1) text += `${at},ship,RT-${unit},unit,,,,\n`;
      else text += `${at},${kind},RT-${unit},unit,${step},${station},,\n`;
    }
    if (!out.write(text)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'finish');
}

try {
  await make();
  const { size } = statSync(file),
    begun = process.cpuUsage();
  let events = 0,
    sum = 0;
  const read = await readLog(
    () => createReadStream(file, { highWaterMark: 1 << 18 }),
    {},
    (batch) => {
      events += batch.length;
      for (const { at } of batch) sum += at;
    },
  );
  const { user, system } = process.cpuUsage(begun),
    seconds = (user + system) / 1e6;
  console.log(
    `${read.rows} rows, ${(size / 1e6).toFixed(0)} MB, in ${seconds.toFixed(1)} s of processor time: ` +
      `${Math.round(read.rows / seconds)} rows a second, at most ` +
      `${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB of memory`,
  );
  // Units that are inside at the first row have an end without a start.
  if (events !== read.rows || !(sum > 0) || read.oddities.some(({ kind }) => kind !== 'missing start'))
    console.log(`expected every row to be used, got ${events} events`, read.oddities);
} finally {
  rmSync(folder, { recursive: true });
}
