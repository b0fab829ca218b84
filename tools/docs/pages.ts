import { jsonSchema, keySchema } from '../../src/scenario/json-schema.js';
import { reference } from './reference.js';

/** The page of scenario keys without its tables. */
export const TEMPLATE = 'docs/template/scenario.md';

/** What is made from the schema, by path from the root; `template` is the text of TEMPLATE. */
export const pages = (template: string): ReadonlyMap<string, string> =>
  new Map([
    ['docs/scenario.md', reference(keySchema(), template)],
    ['scenarios/scenario.schema.json', `${JSON.stringify(jsonSchema(), null, 2)}\n`],
  ]);
