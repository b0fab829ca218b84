import { z } from 'zod';
import { BASES } from './file/basis.js';
import { scenarioSchema } from './schema.js';

/** A node of a JSON Schema (draft 7). */
export type Node = Readonly<Record<string, unknown>>;

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const nodesIn = (value: unknown): Node[] =>
  Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [];

export const definitionsOf = (schema: Node): Readonly<Record<string, Node>> =>
  (schema['definitions'] ?? {}) as Readonly<Record<string, Node>>;
/** The name of the definition that a node refers to. */
export const refOf = (node: Node): string | undefined =>
  typeof node['$ref'] === 'string'
    ? node['$ref'].replace('#/definitions/', '')
    : nodesIn(node['allOf']).map(refOf)[0];
/** The ways to write a value; one that is a choice itself is spread out. */
export const waysOf = (node: Node): Node[] => {
  const ways = [...nodesIn(node['anyOf']), ...nodesIn(node['oneOf'])];
  return ways.length === 0 ? [node] : ways.flatMap(waysOf);
};
/**
 * JSON Schema (draft 7, as editors read it best) of what a planner may write; descriptions included.
 */
export const jsonSchema = (): Node => requiredInWhole(withAssumptions(keySchema()));

/** The same without what may be said of values. */
export function keySchema(): Node {
  const schema = scenarioSchema(
    () => ({ values: [], fault: undefined }),
    () => ({ file: '', headings: [], line: 1, rows: [] }),
  );
  return withIncludedRoutes({
    ...z.toJSONSchema(schema, { io: 'input', target: 'draft-7', reused: 'inline' }),
    title: 'rateproof scenario',
  });
}

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
function withIncludedRoutes(schema: Node): Node {
  const definitions = definitionsOf(schema),
    { route = {} } = definitions,
    items = route['items'] as { readonly anyOf: readonly Node[] };
  return {
    ...schema,
    definitions: { ...definitions, route: { ...route, items: { ...items, anyOf: [...items.anyOf, ENTRY] } } },
  };
}

/**
 * A file without a name is a part of a scenario, and one that includes others may have the rest there: then
 * nothing is asked for.
 */
function requiredInWhole({ required, ...schema }: Node): Node {
  return { ...schema, if: { required: ['scenario'], not: { required: ['include'] } }, then: { required } };
}

const BASIS = { $ref: '#/definitions/basis' },
  NOTE = { $ref: '#/definitions/note' };
const DEFINITIONS: Readonly<Record<string, Node>> = {
  basis: {
    description:
      'Where the value comes from: `measured`, `estimate` (by somebody who knows the work) or ' +
      '`guess`. On a map it applies to all quantities inside that do not state their own. Of measured ' +
      'values a map may say how many: { measured: 84, from: 2027-08-16, to: 2027-10-29, file: times.csv }. ' +
      'Example: estimate',
    anyOf: [
      { type: 'string', enum: BASES },
      {
        type: 'object',
        properties: {
          measured: { description: 'Number of values behind it. Example: 84', type: 'integer', minimum: 1 },
          found: {
            description: 'Of a chance: how many of them had it. Example: 17',
            type: 'integer',
            minimum: 0,
          },
          'standard error': {
            description:
              'Of a learning rate: that of the slope, log2 of the rate. Of a chance without `found`: ' +
              'that of the chance, 0.05 for 5 points. Example: 0.03',
            type: 'number',
            exclusiveMinimum: 0,
          },
          from: { description: 'First day. Example: 2027-08-16', type: 'string' },
          to: { description: 'Last day. Example: 2027-10-29', type: 'string' },
          file: { description: 'Where they stand; a remark. Example: times.csv', type: 'string' },
        },
        required: ['measured'],
        additionalProperties: false,
      },
    ],
  },
  note: {
    description: 'A remark on the value, listed with it in results.json. Example: asked two painters',
    type: 'string',
  },
};
/**
 * The JSON Schema of what planners may write, with `basis` and `note` in every map and `{ value, basis, note
 * }` for every other value.
 */
function withAssumptions(schema: Node): Record<string, unknown> {
  const definitions = Object.fromEntries(
    Object.entries(definitionsOf(schema)).map(([id, node]) => [id, spoken(node)]),
  );
  return { ...inside(schema), definitions: { ...definitions, ...DEFINITIONS } };
}

/** A value, or the same beside what is said of it. */
function spoken(node: Node): Node {
  const whole = inside(node);
  const bare = waysOf(node)
    .filter((way) => way['type'] !== 'object' && refOf(way) === undefined)
    .map(simple);
  if (bare.length === 0) return whole;
  const said = {
    type: 'object',
    properties: {
      value: { description: 'The value itself.', ...(bare.length === 1 ? bare[0] : { anyOf: bare }) },
      basis: BASIS,
      note: NOTE,
    },
    required: ['value'],
    additionalProperties: false,
  };
  for (const choice of ['anyOf', 'oneOf'] as const) {
    const ways = whole[choice];
    if (Array.isArray(ways)) return { ...whole, [choice]: [...(ways as Node[]), said] };
  }
  const { description, default: byDefault, ...rest } = whole;
  return {
    ...(description !== undefined && { description }),
    ...(byDefault !== undefined && { default: byDefault }),
    anyOf: [rest, said],
  };
}

/** A list is only said to be one: what it holds is said once already. */
const simple = (way: Node): Node =>
  way['type'] === 'array'
    ? { type: 'array' }
    : Object.fromEntries(Object.entries(way).filter(([key]) => key !== 'description' && key !== 'default'));

function inside(node: Node): Node {
  const made: Record<string, unknown> = { ...node };
  for (const choice of ['anyOf', 'oneOf'])
    if (Array.isArray(node[choice])) made[choice] = (node[choice] as Node[]).map(inside);
  if (isNode(node['items'])) made['items'] = spoken(node['items']);
  if (isNode(node['additionalProperties']))
    made['additionalProperties'] = spoken(node['additionalProperties']);
  if (node['type'] === 'object') {
    const own = Object.entries((node['properties'] ?? {}) as Readonly<Record<string, Node>>);
    made['properties'] = {
      ...Object.fromEntries(own.map(([key, value]) => [key, spoken(value)])),
      basis: BASIS,
      ...(own.some(([key]) => key === 'note') ? {} : { note: NOTE }),
    };
  }
  return made;
}
