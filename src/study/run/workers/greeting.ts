import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { endianness } from 'node:os';
import { Serializer } from 'node:v8';
import { machineMark } from '../../machine.js';
import { PROGRAM_VERSION } from '../../version.js';

/**
 * What must be the same where a study and where its workers run, by name, as text: each worker greets with
 * its own before it is asked anything, and the study compares all of it with what it would say itself.
 */
export type Greeting = Readonly<Record<string, string>>;

/** A line of text, so that any version can read that of any other. */
const BEGIN = 'rateproof worker ';
/** Letters of a greeting, with room; what has no end by then is none. */
const MOST_LETTERS = 10_000;

/** The folder of the built program; from the sources, as in tests, that of the last build. */
const PROGRAM = new URL(import.meta.url.endsWith('.ts') ? '../../../../dist/' : '../', import.meta.url);

export function ownGreeting(): Greeting {
  return {
    version: PROGRAM_VERSION,
    build: buildDigest(),
    messages: messageForm(),
    bits: machineMark(),
  };
}

export const greetingLine = (greeting: Greeting): string => `${BEGIN}${JSON.stringify(greeting)}\n`;

/** Whether a line that has not ended yet may be a greeting. */
export const mayGreet = (begin: string): boolean =>
  begin.length < MOST_LETTERS && BEGIN.startsWith(begin.slice(0, BEGIN.length));

/** What a line greets with; undefined: it is no greeting. */
export function greetingIn(line: string): Greeting | undefined {
  if (!line.startsWith(BEGIN)) return undefined;
  try {
    const found = JSON.parse(line.slice(BEGIN.length)) as unknown;
    return typeof found === 'object' && found !== null ? (found as Greeting) : undefined;
  } catch {
    return undefined;
  }
}

/** What is not the same there as here, in words; nothing: they belong together. */
export function differencesOf(there: Greeting, here: Greeting): string[] {
  const names = [...new Set([...Object.keys(here), ...Object.keys(there)])];
  return names
    .filter((name) => there[name] !== here[name])
    .map((name) => `${name} there ${there[name] ?? 'none'}, here ${here[name] ?? 'none'}`);
}

/** Of the built program: builds of one version differ while it is worked on. Beginning of a SHA-256. */
function buildDigest(): string {
  const hash = createHash('sha256');
  for (const folder of ['chunks', 'study'])
    for (const name of readdirSync(new URL(`${folder}/`, PROGRAM)).sort())
      hash.update(`${folder}/${name}\n`).update(readFileSync(new URL(`${folder}/${name}`, PROGRAM)));
  return hash.digest('hex').slice(0, 12);
}

/** Version of V8's form of values, which Node 20 to 24 share, and the order of bytes in its numbers. */
function messageForm(): string {
  const serializer = new Serializer();
  serializer.writeHeader();
  return `V8 ${serializer.releaseBuffer()[1] ?? 0}, ${endianness()}`;
}
