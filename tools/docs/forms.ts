import { definitionsOf, isNode, type Node, nodesIn, refOf, waysOf } from '../../src/scenario/json-schema.js';

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
