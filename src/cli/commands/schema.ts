import { existsSync } from 'node:fs';
import { command } from '../arguments/command.js';
import { optional } from '../arguments/option.js';
import { path } from '../arguments/readers.js';
import { EXIT } from '../exit-code.js';
import { readText, writeFile } from '../files.js';
import { print } from '../output.js';
import { UsageError } from '../usage-error.js';

export const schema = command({
  name: 'schema',
  words: {},
  summary: 'JSON Schema of scenario files',
  about: 'the JSON Schema of scenario files',
  examples: [
    ['rateproof schema --out scenario.schema.json', 'lets an editor complete and check scenario files'],
    'then, as the first line of a scenario: # yaml-language-server: $schema=./scenario.schema.json',
  ],
  options: { out: optional('file to write instead of printing', path) },
  request: (given) => given,
  run: async ({ out }) => {
    const { jsonSchema } = await import('../../scenario/json-schema.js');
    const text = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
    if (out === undefined) {
      print(text);
      return EXIT.done;
    }
    if (existsSync(out) && !isSchema(out))
      throw new UsageError(
        `expected ${out} to be free or an older schema, got something else`,
        'choose another name with --out',
      );
    writeFile(out, text);
    return EXIT.done;
  },
});

function isSchema(file: string): boolean {
  try {
    const found: unknown = JSON.parse(readText(file));
    return typeof found === 'object' && found !== null && '$schema' in found;
  } catch {
    return false;
  }
}
