import { jsonSchema } from '../../scenario/json-schema.js';
import { existsSync } from 'node:fs';

import { EXIT, type ExitCode } from '../exit-code.js';
import { readText, writeText } from '../files.js';
import { print } from '../output.js';
import type { SchemaRequest } from '../arguments/request.js';
import { UsageError } from '../usage-error.js';

/** `rateproof schema`: the JSON Schema of scenario files, printed or written. */
export function schema({ out }: SchemaRequest): ExitCode {
  const text = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
  if (out === undefined) {
    print(text);
  } else {
    if (existsSync(out) && !isSchema(out))
      throw new UsageError(
        `expected ${out} to be free or an older schema, but it is something else`,
        'choose another name with --out',
      );
    writeText(out, text);
  }
  return EXIT.done;
}

function isSchema(path: string): boolean {
  try {
    const found: unknown = JSON.parse(readText(path));
    return typeof found === 'object' && found !== null && '$schema' in found;
  } catch {
    return false;
  }
}
