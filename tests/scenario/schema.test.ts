import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { jsonSchema } from '../../src/scenario/json-schema.js';
import { fixture } from './read-small.js';

type Node = Readonly<Record<string, unknown>>;
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const schema = jsonSchema();
const definitions = schema['definitions'] as Readonly<Record<string, Node>>;

/** The schemas that may describe a value: references followed, alternatives spread out. */
function alternatives(node: unknown): Node[] {
  if (!isNode(node)) return [];
  const inner = ['anyOf', 'oneOf', 'allOf'].flatMap((key) =>
    Array.isArray(node[key]) ? (node[key] as unknown[]) : [],
  );
  const target =
    typeof node['$ref'] === 'string' ? definitions[node['$ref'].replace('#/definitions/', '')] : undefined;
  return [node, ...alternatives(target), ...inner.flatMap(alternatives)];
}

/** Is each key of a value known to the schema, all the way down? */
function unknownKeys(value: unknown, nodes: readonly Node[], path: string): string[] {
  if (Array.isArray(value))
    return value.flatMap((item) =>
      unknownKeys(
        item,
        nodes.flatMap((node) => alternatives(node['items'])),
        `${path}[]`,
      ),
    );
  if (!isNode(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const next = nodes.flatMap((node) => [
      ...alternatives((node['properties'] as Node | undefined)?.[key]),
      ...alternatives(node['additionalProperties']),
    ]);
    return next.length === 0 ? [`${path}.${key}`] : unknownKeys(inner, next, `${path}.${key}`);
  });
}

function* nodesOf(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const item of value) yield* nodesOf(item);
  if (!isNode(value)) return;
  yield value;
  for (const inner of Object.values(value)) yield* nodesOf(inner);
}

describe('the JSON schema for editors', () => {
  it('is draft 7, whose keys are closed', () => {
    expect(schema).toMatchObject({
      $schema: 'http://json-schema.org/draft-07/schema#',
      type: 'object',
      additionalProperties: false,
      then: { required: ['scenario', 'programme', 'sites', 'route'] },
    });
  });

  it.each(['full.yaml', 'small.yaml', 'steady.yaml'])('knows every key of %s', (name) => {
    expect(unknownKeys(parse(fixture(name)), [schema], '')).toEqual([]);
  });

  it('does not know a misspelt key', () => {
    expect(unknownKeys({ route: [{ step: 'x', att: 'y' }] }, [schema], '')).toEqual(['.route[].att']);
  });

  it('describes every key', () => {
    const silent: string[] = [];
    for (const node of nodesOf(schema)) {
      if (!isNode(node['properties'])) continue;
      for (const [key, value] of Object.entries(node['properties'])) {
        if (
          !alternatives(value).some(
            ({ description }) => typeof description === 'string' && description.length > 10,
          )
        )
          silent.push(key);
      }
    }
    expect(silent).toEqual([]);
  });

  it('points only at definitions that it has', () => {
    const targets = [...nodesOf(schema)].flatMap(({ $ref }) =>
      typeof $ref === 'string' ? [$ref.replace('#/definitions/', '')] : [],
    );
    expect(targets.length).toBeGreaterThan(10);
    expect(targets.filter((name) => !(name in definitions) || !/^[a-z-]+$/.test(name))).toEqual([]);
  });
});
