import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { readScenario } from '../../src/scenario/read.js';
import { machineDigest } from '../../src/study/machine.js';
import { identityOf } from '../../src/study/run/identity.js';
import { Journal } from '../../src/study/run/journal.js';
import { standardRun } from '../../src/study/standard-run.js';

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url)),
  sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A change of the engine's results changes it: it is then written anew, and told in CHANGELOG.md. */
const KEPT = readFileSync(path('standard-run.sha256'), 'utf8').trim();

afterEach(() => {
  vi.restoreAllMocks();
});

describe('the standard run', () => {
  it('comes to the bits that are kept in the repository', () => {
    expect(machineDigest()).toBe(KEPT);
  });

  it('comes to others where a single function gives another last bit', () => {
    const { sqrt } = Math;
    vi.spyOn(Math, 'sqrt').mockImplementation((x) => sqrt(x) * (1 + Number.EPSILON));
    expect(sha256(standardRun())).not.toBe(KEPT);
  });

  it('keeps replications of other machines out of a journal, in words', () => {
    const folder = mkdtempSync(join(tmpdir(), 'standard-run-'));
    try {
      const text = readFileSync(path('../../scenarios/starter.yaml'), 'utf8'),
        { scenario } = readScenario(text, 'starter.yaml', () => '');
      if (scenario === undefined) throw new Error('expected a sound scenario');
      const here = identityOf({ study: 'simulate', scenario, seed: '1' }),
        file = join(folder, 'out.journal');
      new Journal(file, { ...here, 'standard run': '0123456789abcdef' }).close();
      expect(() => new Journal(file, here)).toThrow(
        `standard run was 0123456789abcdef, now it is ${KEPT.slice(0, 16)} (a machine that comes to other ` +
          'last digits: use a version of Node that docs/platforms.md names)',
      );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

/** Versions that `npm run nodes` has fetched, besides the one that runs this. */
const NODES = path('../../out/nodes'),
  SYSTEM = `${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`,
  fetched = (existsSync(NODES) ? readdirSync(NODES) : []).map(
    (version) => [version, join(NODES, version, 'node_modules', `node-${SYSTEM}`, 'bin', 'node')] as const,
  );

describe.each([['this one', process.execPath] as const, ...fetched])('Node %s', (_, node) => {
  it('comes to the same bits, with the program as built', () => {
    const library = pathToFileURL(path('../../dist/study/library.js')).href,
      code = `import(${JSON.stringify(library)}).then(({ machineDigest }) => console.log(machineDigest()))`;
    expect(execFileSync(node, ['-e', code], { encoding: 'utf8' }).trim()).toBe(KEPT);
  });
});
