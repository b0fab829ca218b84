import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

/** The program as built; `npm test` builds first. */
export const MAIN = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}
export interface Running {
  readonly outcome: Promise<Outcome>;
  interrupt(): void /** Resolves when stderr holds the text. */;
  told(text: string): Promise<void>;
}

/** Whoever runs the tests may ask for colours, which would be in what they look at. */
const PLAIN = { ...process.env };
for (const name of ['FORCE_COLOR', 'NO_COLOR']) Reflect.deleteProperty(PLAIN, name);

/** Starts the program in `cwd` with pipes, so neither stream is a terminal. */
export const start = (cwd: string, ...args: string[]): Running => startWith({ cwd }, ...args);

/** The same with variables of its own. */
function startWith(
  { cwd, env = {} }: { readonly cwd: string; readonly env?: Readonly<Record<string, string>> },
  ...args: string[]
): Running {
  const child = spawn(process.execPath, [MAIN, ...args], {
    cwd,
    env: { ...PLAIN, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let stdout = '',
    stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  const outcome = new Promise<Outcome>((resolve, reject) => {
    child.on('error', reject);
    // As a shell tells it: 128 and the number of the signal that ended the process.
    child.on('close', (code, signal) => {
      resolve({ code: signal === 'SIGINT' ? 130 : code, stdout, stderr });
    });
  });
  return {
    outcome,
    interrupt: () => {
      child.kill('SIGINT');
    },
    told: (text) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          if (stderr.includes(text)) resolve();
        };
        child.stderr.on('data', look);
        child.on('close', () => {
          reject(new Error(`expected "${text}" on stderr, the program ended with: ${stderr}`));
        });
        look();
      }),
  };
}

export const rateproof = (cwd: string, ...args: string[]): Promise<Outcome> => start(cwd, ...args).outcome;

export const rateproofWith = (how: Parameters<typeof startWith>[0], ...args: string[]): Promise<Outcome> =>
  startWith(how, ...args).outcome;

/**
 * Starts the program and kills it, which it cannot notice, as soon as its journal holds so many replications.
 * Rejects where it was not in time.
 */
export async function killedAt(
  cwd: string,
  journal: string,
  replications: number,
  ...args: string[]
): Promise<void> {
  const child = spawn(process.execPath, [MAIN, ...args], { cwd, stdio: 'ignore' });
  const ended = new Promise<string | null>((resolve) =>
    child.on('close', (_, signal) => {
      resolve(signal);
    }),
  );
  while (finished(join(cwd, journal)) < replications) {
    if (child.exitCode !== null)
      throw new Error(`expected to be in time, the program ended with ${child.exitCode}`);
    await setTimeout(5);
  }
  child.kill('SIGKILL');
  if ((await ended) !== 'SIGKILL') throw new Error('expected the program to be killed, it ended before');
}

/** Replications in a journal; see `study/journal.ts`. */
function finished(path: string): number {
  if (!existsSync(path)) return 0;
  const bytes = readFileSync(path);
  let records = 0;
  for (let at = bytes.indexOf('\n') + 1; at > 0 && at + 20 <= bytes.length; records++) {
    at += 20 + bytes.readUInt32LE(at);
    if (at > bytes.length) break;
  }
  // The first is the identity.
  return records - 1;
}

/** Names of the files of a folder, with the digests of their bytes. */
export const contents = (folder: string): string[] =>
  readdirSync(folder)
    .sort()
    .map(
      (file) =>
        `${file} ${createHash('sha256')
          .update(readFileSync(join(folder, file)))
          .digest('hex')}`,
    );

/**
 * A folder that is removed when the test file has ended, with small scenarios in it. All numbers are
 * invented.
 */
export function scenarioFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'rateproof-cli-'));
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  for (const [name, text] of Object.entries(SCENARIOS)) writeFileSync(join(folder, name), text);
  return folder;
}

const oneBench = (perDay: number): string => `scenario: One bench
programme: { start: 2027-03-01, quantity: 60, rate: { per day: ${perDay} } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: unlimited }, trim bench: { buffer: unlimited } } }
route:
  - { step: build, at: bench, work: 2 h }
  - { step: trim, at: trim bench, work: 1 h }
`;

const SCENARIOS: Readonly<Record<string, string>> = {
  // 480 minutes a day, 120 a unit: 4 a day is the most.
  'slack.yaml': oneBench(2),
  'tight.yaml': oneBench(6),
  'endless.yaml': `scenario: Endless bench
programme: { arrivals: { exponential: { mean: 2 h } }, length: 800000 h, warm up: 500 h }
sites: { works: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: build, at: bench, work: { exponential: { mean: 90 min } } }]
`,
  'observed.yaml': oneBench(2).replace(
    'work: 2 h',
    'work: { observed: times.csv, column: minutes, unit: min }',
  ),
  'no-times.yaml': oneBench(2).replace(
    'work: 2 h',
    'work: { observed: nowhere.csv, column: minutes, unit: min }',
  ),
  'times.csv': 'unit,minutes\n1,110\n2,130\n',
  'wrong.yaml': oneBench(2).replace('at: trim bench', 'at: trim bnech').replace('work: 2 h', 'work: 120'),
  'never.yaml': oneBench(2).replace('per day: 2', 'per day: 0'),
};
