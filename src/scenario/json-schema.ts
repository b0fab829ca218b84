import { BASES } from './file/assumptions.js';
import { definitionsOf, refOf, waysOf, type Node } from './json-forms.js';

const BASIS = { $ref: '#/definitions/basis' },
  NOTE = { $ref: '#/definitions/note' };
const DEFINITIONS: Readonly<Record<string, Node>> = {
  basis: {
    description:
      'Where the value comes from: `measured`, `estimate` (by somebody who knows the work) or ' +
      '`guess`. On a map it speaks for all quantities inside that do not say their own. Example: estimate',
    type: 'string',
    enum: BASES,
  },
  note: {
    description: 'A remark on the value, listed with it in results.json. Example: asked two painters',
    type: 'string',
  },
};
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * The JSON Schema of what planners may write, with `basis` and `note` in every map and `{ value, basis, note
 * }` for every other value.
 */
export function withAssumptions(schema: Node): Record<string, unknown> {
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
