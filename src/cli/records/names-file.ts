import { z } from 'zod';
import type { Mapping } from '../../records/names.js';
import { parseYaml } from '../../scenario/file/yaml.js';
import { inMessages, readInput } from '../load.js';
import { UsageError } from '../usage-error.js';

const names = z.record(z.string(), z.string()).optional();
const MAPPING = z.strictObject({ steps: names, stations: names, options: names, defects: names });

/** `--names FILE`: what the log calls things, and what the scenario calls them. */
export function readNames(path: string): Mapping {
  const { value, problems } = parseYaml(readInput(path, 'a file of names'), inMessages(path)),
    read = MAPPING.safeParse(value ?? {});
  if (problems.length === 0 && read.success) return read.data;
  const [first] = read.success ? [] : read.error.issues;
  const fault = `a fault at ${first?.path.join('.') ?? ''}: ${first?.message ?? ''}`,
    got = problems.length > 0 ? 'no YAML' : fault;
  throw new UsageError(
    '--names: expected steps, stations, options and defects, each with "name in the log": name of the ' +
      `scenario, got ${got} in ${path}`,
    'for example: steps: { "PRIME": prime }',
  );
}
