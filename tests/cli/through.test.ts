import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { contents, killedAt, MAIN, rateproof, scenarioFolder, start } from './run-cli.js';
import { runHere } from './run-here.js';

const { inFront, run, workFor } = (await import(
  new URL('../../dist/cli/library.js', import.meta.url).href
)) as typeof import('../../src/cli/library.js');

const folder = scenarioFolder(),
  at = (name: string): string => join(folder, name);
// Invented. Random, with guesses, prices and outages, so that each study does all that it does.
writeFileSync(
  at('two.yaml'),
  `scenario: Two benches
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 5 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: 4 }, trim bench: { buffer: 2 } } } }
costs:
  currency: EUR
  buffer place: { day: 10 }
  changes: { second bench: { relief: place, of: bench, price: 900, at most: 1 }, shelf: { relief: space, of: bench, price: 5 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.5, basis: guess } }
  - { step: trim, at: trim bench, work: { mean: 100 min, cv: 0.5, basis: estimate } }
`,
);
writeFileSync(
  at('steady.yaml'),
  `scenario: steady
programme: { arrivals: { exponential: { mean: 1 h } }, length: 300 h, warm up: mser-5 }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: { exponential: { mean: 30 min } } }]
`,
);
writeFileSync(
  at('what-ifs.yaml'),
  'two benches: { changes: { sites.works.stations.bench.places: 2 } }\nlonger: { changes: { route.build.work: 170 min } }\n',
);
writeFileSync(
  at('factors.yaml'),
  'factors: { benches: { change: sites.works.stations.bench.places, levels: [1, 2] }, spread: { scale: spread, levels: [1, 2] } }\n',
);
const FIXTURE = fileURLToPath(new URL('./counting-worker.mjs', import.meta.url)),
  SPOILT = fileURLToPath(new URL('../study/run/workers/spoilt-worker.mjs', import.meta.url));

/** A small run of each study. */
const STUDIES: readonly (readonly [study: string, ...words: string[]])[] = [
  ['simulate', 'two.yaml', '--replications', '5'],
  ['simulate', 'two.yaml', '--replications', '3', '--precision', '4%', '--most', '34'],
  ['compare', 'two.yaml', 'what-ifs.yaml', '--replications', '4'],
  ['factors', 'two.yaml', 'factors.yaml', '--replications', '3'],
  ['rate', 'two.yaml', '--from', '3', '--to', '4', '--step', '0.5', '--weeks', '4', '--replications', '4'],
  ['reliefs', 'two.yaml', '--replications', '4'],
  ['buffers', 'two.yaml', '--budget', '2', '--at', 'trim bench', '--replications', '4'],
  ['reach', 'two.yaml', '--rate', '4', '--at-most', '1', '--replications', '4'],
];

/** Runs a command in this process and counts the replications that it tells of. */
async function counted(...args: string[]): Promise<{ code: number; stdout: string; replications: number }> {
  const ahead = inFront(),
    before = process.cwd();
  let stdout = '',
    replications = 0,
    last = 0;
  workFor({
    tell: (said) => {
      if (said.kind === 'out') stdout += said.text;
      if (said.kind !== 'replications') return;
      // Each replicator begins anew.
      const [done] = said.args;
      replications += done > last ? done - last : 0;
      last = done;
    },
  });
  process.chdir(folder);
  try {
    return { code: await run([...args, '--finding-ok']), stdout, replications };
  } finally {
    process.chdir(before);
    workFor(ahead);
  }
}

/** Words that count in a file, of a worker of this very program. */
const counting = (file: string): string[] => [
  ...['--workers', '2', '--through', `"${process.execPath}"`],
  ...['--program', `"${FIXTURE}" "${at(file)}"`],
];

describe('studies whose workers are processes', { timeout: 120_000 }, () => {
  it.each(STUDIES.map((words, i) => [words.join(' '), i, words] as const))(
    '%s gives the same bytes as with threads, and asks all replications of them',
    async (_, i, words) => {
      const threads = await counted(...words, '--workers', '2', '--json'),
        processes = await counted(...words, ...counting(`count-${i}`), '--json');
      expect(threads.code).toBe(0);
      expect(processes).toEqual(threads);
      expect(readFileSync(at(`count-${i}`), 'utf8')).toHaveLength(threads.replications);
    },
  );

  it('look for the warm-up through them too', async () => {
    const words = ['simulate', 'steady.yaml', '--replications', '3', '--json', '--quiet'],
      threads = await counted(...words, '--workers', '2'),
      processes = await counted(...words, ...counting('warm'));
    expect(processes).toEqual(threads);
    // 41 of the pilot, at least.
    expect(readFileSync(at('warm'), 'utf8').length).toBeGreaterThanOrEqual(threads.replications + 41);
  });

  it('can be shards, and be merged', async () => {
    mkdirSync(at('shards'));
    const words = ['compare', 'two.yaml', 'what-ifs.yaml', '--replications', '4'],
      shards = ['shards/1', 'shards/2'];
    for (const [i, out] of shards.entries())
      expect(
        await counted(...words, ...counting('sharded'), '--shard', `${i + 1}/2`, '--out', out),
      ).toMatchObject({ code: 0 });
    expect(readFileSync(at('sharded'), 'utf8')).toHaveLength(12);
    const whole = await counted(...words, '--workers', '1', '--json'),
      merged = await counted('merge', ...shards, ...counting('merged'), '--json');
    expect(merged.stdout).toBe(whole.stdout);
    expect(readFileSync(at('merged'), 'utf8')).toHaveLength(merged.replications);
    expect(merged.replications).toBeGreaterThan(0);
  });

  it('go on from a journal that threads began, and the other way round', async () => {
    const words = ['compare', 'two.yaml', 'what-ifs.yaml', '--replications', '40', '--finding-ok'],
      through = ['--workers', '2', '--through', 'nice'];
    await runHere(folder, ...words, '--workers', '1', '--out', 'whole');
    for (const [out, first, second] of [
      ['from-threads', ['--workers', '1'], through],
      ['from-processes', through, ['--workers', '1']],
    ] as const) {
      await killedAt(folder, `${out}.journal`, 20, ...words, ...first, '--out', out);
      const { stderr } = await runHere(folder, ...words, ...second, '--out', out);
      expect(stderr).toMatch(/^found \d+ finished replications of an earlier run/m);
      expect(contents(at(out))).toEqual(contents(at('whole')));
    }
  });

  it('give the same bytes when a worker dies and another is of another version; both are told', async () => {
    const words = ['compare', 'two.yaml', 'what-ifs.yaml', '--replications', '5', '--finding-ok'];
    for (const how of ['dies', 'greets']) writeFileSync(at(how), '');
    const spoilt = ['dies', 'greets'].flatMap((how) => [
      '--through',
      `"${process.execPath}" "${SPOILT}" ${how} "${at(how)}"`,
    ]);
    const threads = await rateproof(folder, ...words, '--workers', '2', '--out', 'unspoilt'),
      { code, stdout, stderr } = await rateproof(
        folder,
        ...words,
        '--workers',
        '4',
        ...spoilt,
        '--out',
        'spoilt',
      );
    expect({ code, stdout }).toEqual({ code: 0, stdout: threads.stdout });
    expect(stderr).toMatch(/^worker \d \(.*\) was ended by SIGKILL; its replication is run again$/m);
    expect(stderr).toMatch(/^worker \d \(.*\) is of another program: version there 0\.1\.0, here /m);
    expect(contents(at('spoilt'))).toEqual(contents(at('unspoilt')));
  });
});

describe('a command that starts no worker', { timeout: 60_000 }, () => {
  it('ends the study with what it said, exit code 2', async () => {
    const { code, stdout, stderr } = await rateproof(
      folder,
      ...['simulate', 'two.yaml', '--quiet', '--workers', '2'],
      ...['--through', `"${process.execPath}" -e "console.error('no room'); process.exit(4)"`],
    );
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(
      /^no room\nerror: --through: expected workers that answer, got none: the last one ended with exit code 4; it was started by .* worker\nhint: .*docs\/through\.md.*\n$/,
    );
  });

  it.each([
    [['--through', 'nice'], /^error: --through: expected --workers with the number of processes, got none\n/],
    [['--workers', '2', '--program', 'x'], /^error: --program: expected --through beside it, got none\n/],
    [['--workers', '2', '--through', ''], /^error: --through: expected the words of a command, got none\n/],
    [
      ['--workers', '2', '--through', 'ssh "node7'],
      /^error: --through: expected the words of a command, got a quote that has no end: ssh "node7\n/,
    ],
  ])('%s is refused', async (words, told) => {
    const { code, stderr } = await runHere(folder, 'simulate', 'two.yaml', ...words);
    expect(code).toBe(2);
    expect(stderr).toMatch(told);
  });
});

describe('Ctrl-C', { timeout: 60_000 }, () => {
  const running = (pid: number): boolean => {
    try {
      process.kill(pid, 0);
      return true;
    } catch {
      return false;
    }
  };
  /** Writes down who it is, and then is what the words behind it say. */
  const noting = (file: string): string =>
    `"${process.execPath}" -e "fs.appendFileSync('${file}', process.pid + ' ');` + `import(process.argv[1])"`;

  it.each([
    ['workers at work', '', 2000],
    // It hears neither the end of its input nor a word to end.
    ['processes that are none, and stay', 'process.on(`SIGTERM`, () => 0); setInterval(() => 0, 1000)', 4000],
  ])('ends %s', async (_, stubborn, within) => {
    const file = at(stubborn === '' ? 'pids-at-work' : 'pids-stubborn'),
      command =
        stubborn === ''
          ? ['--through', noting(file), '--program', `"${MAIN}"`]
          : [
              '--through',
              `"${process.execPath}" -e "fs.appendFileSync('${file}', process.pid + ' '); ${stubborn}"`,
            ];
    const study = start(
      folder,
      ...['simulate', 'endless.yaml', '--workers', '2', '--replications', '40'],
      ...command,
    );
    const pids = (): number[] =>
      existsSync(file) ? readFileSync(file, 'utf8').trim().split(' ').map(Number) : [];
    while (pids().length < 2) await setTimeout(20);
    // Time to hear of the end that is to come.
    await setTimeout(500);
    expect(pids().every(running)).toBe(true);
    const since = performance.now();
    study.interrupt();
    const { code, stderr } = await study.outcome;
    expect(code).toBe(130);
    expect(stderr).toMatch(/interrupted; no report was written\n$/);
    expect(performance.now() - since).toBeLessThan(within + 2500);
    // Whoever inherits an ended process may take a moment to see it.
    for (let waited = 0; waited < 5000 && pids().some(running); waited += 50) await setTimeout(50);
    expect(pids().filter(running)).toEqual([]);
  });
});
