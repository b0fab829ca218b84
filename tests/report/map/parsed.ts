import { SaxesParser } from 'saxes';

/** What is in an XML document: the attributes of its root, and by name all elements, attributes and texts. */
export interface Parsed {
  readonly root: Readonly<Record<string, string>>;
  readonly elements: ReadonlySet<string>;
  readonly attributes: ReadonlySet<string>;
  readonly texts: ReadonlyMap<string, readonly string[]>;
}

/** Throws where the document is not well-formed. */
export function parsed(xml: string): Parsed {
  const parser = new SaxesParser(),
    open: string[] = [],
    elements = new Set<string>(),
    attributes = new Set<string>(),
    texts = new Map<string, string[]>();
  let root: Readonly<Record<string, string>> | undefined;
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    root ??= tag.attributes;
    open.push(tag.name);
    elements.add(tag.name);
    for (const name of Object.keys(tag.attributes)) attributes.add(name);
  });
  parser.on('text', (text) => {
    const name = open.at(-1) ?? '';
    texts.set(name, [...(texts.get(name) ?? []), text]);
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(xml).close();
  return { root: root ?? {}, elements, attributes, texts };
}
