import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';

/** Texts of files by their path, seen from the folder of the scenario. */
export type Files = Readonly<Record<string, string>>;

/** A scenario to be spoilt: its own file and all that it may name. */
export interface Source {
  /** Path in `scenarios/`. */
  readonly path: string;
  /** The name of its own file in `files`. */
  readonly main: string;
  readonly files: Files;
}

const ROOT = join(process.cwd(), 'scenarios');
const isTable = (name: string): boolean => name.endsWith('.csv');
const isText = (name: string): boolean => name.endsWith('.yaml') || isTable(name);
const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

function filesIn(folder: string, recursive: boolean): Record<string, string> {
  const names = readdirSync(join(ROOT, folder), { recursive, encoding: 'utf8' }).map((name) =>
    name.replaceAll('\\', '/'),
  );
  return Object.fromEntries(names.filter(isText).map((name) => [name, textOf(posix.join(folder, name))]));
}

const source = (path: string, folder: string, beside: (name: string) => boolean): Source => {
  const main = posix.basename(path),
    there = filesIn(folder, true);
  return {
    path,
    main,
    files: Object.fromEntries(Object.entries(there).filter(([name]) => name === main || beside(name))),
  };
};

export const SOURCES: readonly Source[] = [
  source('starter.yaml', '.', () => false),
  source(
    'rescue-tender.yaml',
    '.',
    (name) => name.startsWith('rescue-tender/') && !name.includes('what-ifs'),
  ),
  ...Object.keys(filesIn('rules', false))
    .filter((name) => !isTable(name))
    .map((name) => source(`rules/${name}`, 'rules', (beside) => isTable(beside) || beside.includes('/'))),
];
export const [STARTER, DEMO] = SOURCES as readonly [Source, Source];
export const DEMO_WHAT_IFS = textOf('rescue-tender/what-ifs.yaml');

/** Its own file, or one of those beside it. */
export const fileOf = ({ main, files }: Source, which: number): string =>
  which % 3 > 0 ? main : (Object.keys(files)[which % Object.keys(files).length] ?? main);
