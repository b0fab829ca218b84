/** A node of a JSON Schema (draft 7). */
export type Node = Readonly<Record<string, unknown>>;

/** A map with fixed keys that a planner may write at `address`. */
export interface Form {
  /**
   * Keys from the top, `*` for a name of the planner's; what a list holds has the address of the list:
   * `sites.*.stations.*`. A definition begins anew: `time`.
   */
  readonly address: string;
  readonly node: Node;
  readonly keys: Readonly<Record<string, Node>>;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const nodesIn = (value: unknown): Node[] =>
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
/** What a map holds under names of the planner's. */
export const namedValueOf = (node: Node): Node | undefined =>
  isNode(node['additionalProperties']) ? node['additionalProperties'] : undefined;

/**
 * Forms of a value itself, not of what its keys hold; like ones once. Definitions are not followed: they are
 * told of for themselves.
 */
export function formsOf(node: Node, address: string): Form[] {
  const found = waysOf(node).flatMap((way): Form[] => {
    if (refOf(way) !== undefined) return [];
    const inList = nodesIn(way['items']).flatMap((item) => formsOf(item, address));
    const named = namedValueOf(way);
    const underNames = named === undefined ? [] : formsOf(named, `${address}.*`);
    const own: Form[] = isNode(way['properties'])
      ? [{ address, node: way, keys: way['properties'] as Form['keys'] }]
      : [];
    return [...own, ...inList, ...underNames];
  });
  const same = (a: Form, b: Form): boolean =>
    a.address === b.address && JSON.stringify(a.keys) === JSON.stringify(b.keys);
  return found.filter((form, i) => found.findIndex((other) => same(form, other)) === i);
}

/** Forms inside the keys of a form, one level down. */
export const innerForms = (form: Form): Form[] =>
  Object.entries(form.keys).flatMap(([key, node]) =>
    formsOf(node, form.address === '' ? key : `${form.address}.${key}`),
  );

/**
 * All forms of a schema: the file itself first (its address is empty), then what is inside, then the
 * definitions.
 */
export function allForms(schema: Node): Form[] {
  const withInner = (form: Form): Form[] => [form, ...innerForms(form).flatMap(withInner)];
  const definitions = Object.entries(definitionsOf(schema)).flatMap(([id, node]) => formsOf(node, id));
  return [...formsOf(schema, ''), ...definitions].flatMap(withInner);
}
