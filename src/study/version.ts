import { readFileSync } from 'node:fs';

/** Version of the program, from its package. */
export const PROGRAM_VERSION: string = (
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
).version;
