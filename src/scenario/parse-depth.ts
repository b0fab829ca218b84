import type { CST } from 'yaml';

/** How deep maps and lists may nest: a full scenario needs about ten. */
export const DEEPEST = 60;

type Node = {
  readonly items?: readonly { readonly key?: unknown; readonly value?: unknown }[];
  readonly value?: unknown;
  readonly offset?: number;
};

/**
 * Offset of the first token that nests deeper than `DEEPEST`, or undefined.
 * Asked before the tree is composed, which recurses and could exhaust the stack.
 */
export function tooDeepAt(token: CST.Token): number | undefined {
  const waiting: { node: Node; depth: number }[] = [{ node: token as Node, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { node, depth } = next;
    if (depth > DEEPEST) return node.offset ?? 0;
    const add = (child: unknown): void => {
      if (typeof child === 'object' && child !== null)
        waiting.push({ node: child as Node, depth: depth + 1 });
    };
    add(node.value);
    for (const item of node.items ?? []) {
      add(item.key);
      add(item.value);
    }
  }
  return undefined;
}
