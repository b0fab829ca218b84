import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Outcome } from './demands.js';
import type { Files } from './spoilt/sources.js';

const MAIN = join(process.cwd(), 'dist/cli/main.js');
/** Seconds that a process may take, on a busy machine; what is tried takes half a second. */
export const LONGEST_PROCESS = 20;

/** Runs the program in a folder; ends it when it takes too long. */
export function runProgram(
  folder: string,
  args: readonly string[],
  longest = LONGEST_PROCESS,
): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [MAIN, ...args], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stdout = '',
      stderr = '',
      tooLong = false;
    const timer = setTimeout(() => {
      tooLong = true;
      child.kill('SIGKILL');
    }, longest * 1000);
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve({ code, stdout, stderr, tooLong });
    });
  });
}

/** Does work in a new folder, which is removed behind it. */
async function inFolder<T>(fill: (folder: string) => void, work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'rateproof-fuzz-'));
  try {
    fill(folder);
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

export const withFiles = <T>(files: Files, work: (folder: string) => Promise<T>): Promise<T> =>
  inFolder((folder) => {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
  }, work);
export const withCopyOf = <T>(original: string, work: (folder: string) => Promise<T>): Promise<T> =>
  inFolder((folder) => {
    cpSync(original, folder, { recursive: true });
  }, work);
