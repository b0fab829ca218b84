import { type Node, refOf, waysOf } from '../../src/scenario/json-schema.js';
import { NAME } from '../../src/scenario/values/keys.js';
import { CHANCE, CLOCK, CLOCK_SPAN, DATE, TIME } from '../../src/scenario/values/quantity.js';
import { exact } from '../../src/scenario/values/thousands.js';
import { namedValueOf } from './forms.js';

/** A description taken apart: what a key means, and the default and the example that it ends with. */
export interface Words {
  readonly meaning: string;
  readonly byDefault: string | undefined;
  readonly example: string | undefined;
}

/** Texts end with `Default: ...` and `Example: ...`, either of which may be missing. */
export function wordsOf(description: string): Words {
  const [, said = description, example] = /^(.*?)\s*Example: (.*)$/s.exec(description) ?? [];
  const byDefault = /\s*Default: (.*?)(?:\.(?= [A-Z])|\.?$)/s.exec(said);
  const meaning = (byDefault === null ? said : said.replace(byDefault[0], '')).trim();
  return { meaning: meaning.replace(/([^.:;])$/, '$1.'), byDefault: byDefault?.[1], example };
}

const PATTERNS: Readonly<Record<string, string>> = {
  [TIME.source]: 'fixed time',
  [CHANCE.source]: 'percentage',
  [DATE.source]: 'date',
  [CLOCK.source]: 'clock time',
  [CLOCK_SPAN.source]: 'clock times',
  [NAME.source]: 'name',
};

/**
 * How a value is written, in a few words: `whole number from 1 or \`unlimited\``. `link` says the name of a
 * definition.
 */
export function kindOf(node: Node, link: (definition: string) => string): string {
  return orList([...new Set(waysOf(node).flatMap((way) => kindsOfWay(way, link)))]);
}

const orList = (kinds: readonly string[]): string =>
  kinds.length > 2 ? `${kinds.slice(0, -1).join(', ')} or ${kinds.slice(-1).join()}` : kinds.join(' or ');

function kindsOfWay(way: Node, link: (definition: string) => string): string[] {
  const ref = refOf(way);
  if (ref !== undefined) return [link(ref)];
  if (Array.isArray(way['enum'])) return way['enum'].map((value) => code(String(value)));
  if (way['const'] !== undefined) return [code(JSON.stringify(way['const']).replaceAll('"', ''))];
  switch (way['type']) {
    case 'string':
      return [PATTERNS[String(way['pattern'])] ?? 'text'];
    case 'boolean':
      return [code('true'), code('false')];
    case 'integer':
      return [`whole number${limits(way)}`];
    case 'number':
      return [`number${limits(way)}`];
    case 'array': {
      const item = kindOf((way['items'] ?? {}) as Node, link);
      return [
        /^[a-z ]*[a-rt-z]$/.test(item)
          ? `list of ${item}s`
          : item.length > LONGEST_INNER
            ? 'list'
            : `list of ${item}`,
      ];
    }
    case 'object':
      return [kindOfMap(way, link)];
    default:
      return ['value'];
  }
}

const LONGEST_INNER = 60;
const MOST_KEYS_SHOWN = 4;

/** `{ count, work, settle }`, or what stands under each name. */
function kindOfMap(way: Node, link: (definition: string) => string): string {
  const fixed = Object.keys(way['properties'] ?? {});
  const named = namedValueOf(way);
  if (fixed.length > MOST_KEYS_SHOWN) return 'map';
  if (fixed.length > 0) return code(`{ ${[...fixed, ...(named === undefined ? [] : ['...'])].join(', ')} }`);
  const value = named === undefined ? '' : kindOf(named, link);
  return value === ''
    ? 'map'
    : value.includes('by name') || value.length > LONGEST_INNER
      ? 'map by name'
      : `by name: ${value}`;
}

/** The upper limit of a whole number where nothing else is said, as the page says at its beginning. */
const USUAL_MOST = 1_000_000;
/** From here on a limit only catches slips of the pen. */
const LEAST_UNTOLD = 1e9;

function limits(way: Node): string {
  const least = way['minimum'],
    most = way['maximum'],
    above = way['exclusiveMinimum'];
  const isTold = typeof most === 'number' && most !== USUAL_MOST && most < LEAST_UNTOLD;
  const upTo = isTold ? ` to ${exact(most)}` : '';
  if (typeof least === 'number') return ` from ${least}${upTo}`;
  return typeof above === 'number' ? ` above ${above}${upTo}` : '';
}

/** Text for a cell of a table: maps and lists as code, bars escaped. */
export function cell(text: string): string {
  const parts = text.split(/(`[^`]*`)/);
  return parts
    .map((part, i) => (i % 2 === 1 ? part : bracesAsCode(part)))
    .join('')
    .replaceAll('|', '\\|')
    .replaceAll('\n', ' ');
}

/** `such as { a: { b: 1 } }` -> the outermost braces in code marks. */
function bracesAsCode(text: string): string {
  let depth = 0,
    out = '';
  for (const char of text) {
    if (char === '{' && depth++ === 0) out += '`';
    out += char;
    if (char === '}' && depth > 0 && --depth === 0) out += '`';
  }
  return depth === 0 ? out : text;
}

export const code = (text: string): string => `\`${text}\``;
