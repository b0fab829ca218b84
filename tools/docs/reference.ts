import { definitionsOf, jsonSchema, keySchema, type Node, waysOf } from '../../src/scenario/json-schema.js';
import { allForms, type Form, formsOf, innerForms } from './forms.js';
import { cell, code, kindOf, wordsOf } from './reference-words.js';

/**
 * `<!-- keys: sites.*.stations.* -->`, several addresses with commas; or of several forms at an address one:
 * `<!-- keys: route with step -->`.
 */
const KEYS_MARK = /^<!-- keys: (.+?)(?: with (.+?))? -->$/;
const VALUES_MARK = '<!-- values -->';
const CONTENTS_MARK = '<!-- contents -->';
const REST_MARK = '<!-- other sections -->';
/** The address of the file itself, whose keys have sections rather than rows. */
const TOP = '(top)';

interface Mark {
  readonly line: string;
  readonly forms: readonly Form[];
  readonly section: string;
}

/**
 * docs/scenario.md: the template's prose with a table of keys at each mark, made from the JSON Schema of what
 * planners write. Forms that no mark names stand as rows of the map that holds them, or in a section of their
 * own at `<!-- other sections -->`, so that no key is ever missing. Throws for a mark that names nothing.
 */
export function reference(schema: Node, template: string): string {
  const lines = template.split('\n');
  const forms = allForms(schema);
  const marks = marksOf(lines, forms);
  // Where a form has several tables, the first is linked.
  const linked = new Map(
    [...marks]
      .reverse()
      .flatMap(({ forms: own, section }) =>
        own.map((form): [string, string] => [form.address, anchor(section)]),
      ),
  );
  const inMarks = marks.flatMap((mark) => mark.forms);
  const table = (own: readonly Form[]): string => tableOf(own, inMarks, linked, schema);

  const [top] = forms;
  const inFile = top === undefined ? [] : innerForms(top);
  const definitions = Object.entries(definitionsOf(schema)).flatMap(([id, node]) => formsOf(node, id));
  const marked = new Set(inMarks.map(keyOf));
  const homeless = [...inFile, ...definitions].filter((form) => !marked.has(keyOf(form)));

  const titleOf = ({ address, keys }: Form): string =>
    lines.includes(`## ${heading(address)}`)
      ? `${heading(address)}: ${Object.keys(keys)[0] ?? ''}`
      : heading(address);
  const titles = [...new Set(homeless.map(titleOf))];
  const rest = titles
    .map((title) =>
      [
        `## ${title}`,
        ...homeless.filter((form) => titleOf(form) === title).map((form) => table([form])),
      ].join('\n\n'),
    )
    .join('\n\n');
  const filled = lines.flatMap((line) => {
    const mark = marks.find((one) => one.line === line);
    if (mark !== undefined) return [table(mark.forms)];
    if (line === VALUES_MARK) return valuesOf(schema);
    return line === REST_MARK ? (rest === '' ? [] : [rest]) : [line];
  });
  return `${filled
    .join('\n')
    .replace(CONTENTS_MARK, contents(filled.join('\n')))
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

function marksOf(lines: readonly string[], forms: readonly Form[]): Mark[] {
  let section = '';
  return lines.flatMap((line): Mark[] => {
    section = /^#{2,3} (.+)$/.exec(line)?.[1] ?? section;
    const [, places, key] = KEYS_MARK.exec(line) ?? [];
    if (places === undefined) return [];
    const addresses = places.split(', ').map((place) => (place === TOP ? '' : place));
    const own = forms.filter(
      ({ address, keys }) => addresses.includes(address) && (key === undefined || Object.hasOwn(keys, key)),
    );
    if (!addresses.every((address) => own.some((form) => form.address === address)))
      throw new Error(`the template names keys that the schema does not have: ${line}`);
    return [{ line, forms: own, section }];
  });
}

/** Rows of the forms, and below each key those of the maps that it holds, unless they have their own table. */
function tableOf(
  forms: readonly Form[],
  marked: readonly Form[],
  linked: ReadonlyMap<string, string>,
  schema: Node,
): string {
  const hasTable = new Set(marked.map(keyOf));
  const rows: string[] = [];
  /** Keys said at the outer level of this table: said again of an inner map, they would only lengthen it. */
  const said = new Set<string>();
  const link = (id: string): string => {
    const at = linked.get(id),
      words = id.replaceAll('-', ' ');
    return at === undefined ? words : `[${words}](#${at})`;
  };
  const add = (form: Form, above: string, alone: boolean): void => {
    const required = (form.node['required'] ?? []) as readonly string[];
    for (const [key, node] of Object.entries(form.keys)) {
      const inner = formsOf(node, form.address === '' ? key : `${form.address}.${key}`);
      const words = wordsOf(describe(node, schema));
      const saidAs = JSON.stringify([key, words.meaning]);
      if (above !== '' && said.has(saidAs)) continue;
      if (above === '') said.add(saidAs);
      const section = inner.map(({ address }) => linked.get(address)).find((at) => at !== undefined);
      const more = section === undefined ? '' : ` Keys: [${section.replaceAll('-', ' ')}](#${section}).`;
      const example =
        words.example === undefined
          ? ''
          : ` Example: ${words.example.includes('`') ? words.example : code(words.example)}`;
      const byDefault =
        alone && required.includes(key) && node['default'] === undefined
          ? 'required'
          : (words.byDefault ?? sayDefault(node['default']));
      const meaning = cell(`${words.meaning}${more}${example}`);
      const row = `| ${above}${code(key)} | ${kindOf(node, link)} | ${meaning} | ${cell(byDefault)} |`;
      if (!rows.includes(row)) rows.push(row);
      if (form.address === '') continue;
      const untold = inner.filter((one) => !hasTable.has(keyOf(one)));
      for (const one of untold)
        add(
          one,
          `${above}${code(key)} › ${one.address.endsWith('*') ? '*name* › ' : ''}`,
          untold.length === 1,
        );
    }
  };
  for (const form of forms)
    add(
      form,
      '',
      forms.every(({ keys }) => Object.keys(keys).join() === Object.keys(form.keys).join()),
    );
  return ['| key | written as | meaning | default |', '|---|---|---|---|', ...rows].join('\n');
}

/** A default that the schema fills in though the text does not name it. */
const sayDefault = (value: unknown): string =>
  value === undefined ? '' : typeof value === 'object' ? 'none' : JSON.stringify(value).replaceAll('"', '');

/** What a key says of itself, else the definition that it refers to, else one of the ways to write it. */
function describe(node: Node, schema: Node): string {
  if (typeof node['description'] === 'string') return node['description'];
  const target =
    typeof node['$ref'] === 'string'
      ? definitionsOf(schema)[node['$ref'].replace('#/definitions/', '')]
      : undefined;
  if (target !== undefined) return describe(target, schema);
  const ways = waysOf(node);
  return ways.length > 1 ? (ways.map((way) => describe(way, schema)).find((text) => text !== '') ?? '') : '';
}

/** Definitions that are no map: how such a value is written. */
function valuesOf(schema: Node): string[] {
  const plain = Object.entries(definitionsOf(schema)).filter(
    ([id, node]) => formsOf(node, id).length === 0 && typeof node['description'] === 'string',
  );
  return plain.map(
    ([id, node]) =>
      `- **${id.replaceAll('-', ' ')}**: ${String(node['description']).replace(/^A [a-z ]+: /, '')}`,
  );
}

const keyOf = ({ address, keys }: Form): string => `${address} ${JSON.stringify(Object.keys(keys))}`;
const anchor = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');
const heading = (address: string): string => {
  const [first = ''] = address.split('.');
  return `${first.charAt(0).toUpperCase()}${first.slice(1).replaceAll('-', ' ')}`;
};
const contents = (text: string): string =>
  [...text.replace(/^```.*?^```$/gms, '').matchAll(/^## (.+)$/gm)]
    .map(([, title = '']) => `[${title.toLowerCase()}](#${anchor(title)})`)
    .join(' | ');

/** The page of scenario keys without its tables. */
export const TEMPLATE = 'docs/template/scenario.md';

/** What is made from the schema, by path from the root; `template` is the text of TEMPLATE. */
export const pages = (template: string): ReadonlyMap<string, string> =>
  new Map([
    ['docs/scenario.md', reference(keySchema(), template)],
    ['scenarios/scenario.schema.json', `${JSON.stringify(jsonSchema(), null, 2)}\n`],
  ]);
