import type { Node } from '../json-forms.js';
import { name, oneOrMore } from '../values/keys.js';

/** Read and taken out before the schema is asked; it stands in the schema for those who read or write it. */
export const includeSchema = oneOrMore(name('the name of a file'), 'the name of a file, or a list of them')
  .optional()
  .describe(
    'Other files with parts of this scenario, paths relative to the file that names them. ' +
      'Default: none. Example: [paint.yaml, final-plant.yaml]',
  );

const ENTRY: Node = {
  type: 'object',
  properties: {
    include: {
      type: 'string',
      description: 'The route of this file stands here; all else in it is included too. Example: paint.yaml',
    },
  },
  required: ['include'],
  additionalProperties: false,
};

/** Adds to the schema that an entry of a route may name a file. */
export function withIncludedRoutes(schema: Node): Node {
  const definitions = schema['definitions'] as Readonly<Record<string, Node>>;
  const items = definitions['route']!['items'] as { readonly anyOf: readonly Node[] };
  return {
    ...schema,
    definitions: {
      ...definitions,
      route: { ...definitions['route'], items: { ...items, anyOf: [...items.anyOf, ENTRY] } },
    },
  };
}

/**
 * A file without a name is a part of a scenario, and one that includes others may have the rest there: then
 * nothing is asked for.
 */
export function requiredInWhole({ required, ...schema }: Node): Node {
  return { ...schema, if: { required: ['scenario'], not: { required: ['include'] } }, then: { required } };
}
