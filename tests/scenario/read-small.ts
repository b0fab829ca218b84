import { readFileSync } from 'node:fs';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { keySchema } from '../../src/scenario/json-schema.js';
import { type ReadResult, readScenario } from '../../src/scenario/read.js';

const folder = new URL('./fixtures/', import.meta.url);
export const fixture = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

/** A text of small.yaml and what stands there instead. */
export type Edit = readonly [before: string, after: string];

const csv: Readonly<Record<string, string | undefined>> = {
  'bad.csv': 'unit,minutes\n1,12\n2,x\n',
  'quote.csv': 'unit,minutes\n1,"12\n',
  'empty.csv': '',
};

export function readText(text: string): ReadResult {
  return readScenario(text, 'small.yaml', (path) => {
    const content = csv[path];
    if (content === undefined) throw new Error('no such file');
    return content;
  });
}

/** What is said of small.yaml after edits, line by line; the name of the file is left out. */
export function said(...edits: Edit[]): string[] {
  let text = fixture('small.yaml');
  for (const [before, after] of edits) {
    if (!text.includes(before)) throw new Error(`small.yaml has no "${before}"`);
    text = text.replace(before, after);
  }
  return (readText(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^small\.yaml:/, ''));
}

/** The sections of a scenario, in the order of the schema. */
export const SECTIONS = Object.keys((keySchema() as { properties: object }).properties).join(', ');
