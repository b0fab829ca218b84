import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
interface Package {
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly license?: string;
  readonly hasInstallScript?: boolean;
}
const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
  readonly packages: Readonly<Record<string, Package>>;
};
/** What `npm ci --omit=dev` installs; of the optional ones, which are the same for other machines, only some. */
const installed = Object.entries(lock.packages).filter(([path, { dev }]) => path !== '' && dev !== true);
const nameOf = (path: string): string => path.replace(/^.*node_modules\//, '');

describe('the packages that have to be installed to run the program', () => {
  it('are few, none runs a script when it is installed, and their licences allow use as it is', () => {
    const always = installed.filter(([, { optional }]) => optional !== true);
    expect(always.length).toBeLessThan(20);
    expect(installed.filter(([, { hasInstallScript }]) => hasInstallScript === true)).toEqual([]);
    // DejaVu's is free for use and embedding (Bitstream Vera), Inter's is the SIL Open Font License.
    expect([...new Set(installed.map(([, { license }]) => license))].sort()).toEqual([
      'MIT',
      'MIT AND OFL-1.1',
      'SEE LICENSE IN README.md AND LICENSE',
    ]);
  });

  it('are all that the built program asks for by name', () => {
    const names = new Set(installed.map(([path]) => nameOf(path))),
      files = readdirSync(join(root, 'dist'), { recursive: true, encoding: 'utf8' }).filter((name) =>
        name.endsWith('.js'),
      ),
      asked = new Set<string>();
    for (const file of files) {
      const text = readFileSync(join(root, 'dist', file), 'utf8');
      // Imports of modules stand at the beginning of a line; others are calls.
      // Imports of modules stand at the beginning of a line; others are calls.
      for (const found of text.matchAll(
        /^(?:import|export) .*?["'](?<name>[^"']+)["'];?$|(?:import|import\.meta\.url\))\(["'](?<called>[^"']+)["']\)/gm,
      ))
        for (const name of Object.values(found.groups ?? {}) as (string | undefined)[])
          if (name !== undefined) asked.add(name);
    }
    const packages = [...asked]
      .filter((name) => /^[@a-z]/.test(name) && !name.startsWith('node:'))
      .map((name) =>
        name
          .split('/')
          .slice(0, name.startsWith('@') ? 2 : 1)
          .join('/'),
      )
      .filter((name) => !builtinModules.includes(name));
    expect(packages).toContain('@napi-rs/canvas');
    expect(packages.filter((name) => !names.has(name))).toEqual([]);
  });
});
