import fc from 'fast-check';

/** What is done to a text: at a place, by its number, and up to another. */
export interface TextEdit {
  readonly way: keyof typeof WAYS;
  readonly from: number;
  readonly length: number;
  readonly piece: string;
}

const YAML_PIECES = [
  ...[
    '\t',
    '\r',
    '\r\n',
    '\n',
    '\ufeff',
    '\0',
    '\u001b[2J',
    '\u009b',
    '\u202e',
    '\u2066',
    '\u2028',
    '\u0085',
  ],
  ...[
    '\ud800',
    '\ufffd',
    '&a ',
    '*a',
    '*nowhere',
    '<<: *a\n',
    '\n<<: {a: 1}\n',
    '!!str ',
    '!!binary ',
    '!!set ',
  ],
  ...[
    '!!float ',
    '!!timestamp ',
    '!<tag:x> ',
    '!!js/function ',
    '! ',
    '? ',
    '? [a, b]\n: c\n',
    '---\n',
    '...\n',
  ],
  ...[
    '%YAML 1.1\n',
    '%TAG ! x\n',
    '%',
    '|\n',
    '>-\n',
    '|9\n',
    '{',
    '}',
    '[',
    ']',
    '"',
    "'",
    '#',
    ': ',
    '- ',
    ',',
  ],
  ...[
    '@',
    '`',
    '\\',
    '"\\x00"',
    '"\\u202e"',
    '"\\ud800"',
    '~',
    '.nan',
    '.inf',
    '-.inf',
    '0o17',
    '0x1F',
    '1_000',
  ],
  ...[
    '[*a, *a, *a, *a, *a, *a, *a, *a, *a]',
    '&a [*a]',
    '[[[[',
    '{a: {a: {a: ',
    '- - - - - ',
    'x'.repeat(2000),
  ],
];
const CSV_PIECES = [
  ...[
    '"',
    '""',
    ',',
    ';',
    '\t',
    '\n',
    '\r',
    '\r\n',
    '\n\n',
    '\ufeff',
    '\0',
    '\u001b',
    '\u202e',
    '\ud800',
    "'",
    '#',
  ],
  ...['"\n', '=1+1', '1e300', '-1', 'NaN', ' ', '""""', 'x'.repeat(2000), ',,,,', '\u2028', '0', '1,5', '٣'],
];

const lineAt = (text: string, at: number): [number, number] => [
  text.lastIndexOf('\n', at - 1) + 1,
  text.includes('\n', at) ? text.indexOf('\n', at) + 1 : text.length,
];

const WAYS = {
  cut: (text: string, at: number, to: number) => text.slice(0, at) + text.slice(to),
  cutOff: (text: string, at: number) => text.slice(0, at),
  begin: (text: string, at: number) => text.slice(at),
  insert: (text: string, at: number, _: number, piece: string) => text.slice(0, at) + piece + text.slice(at),
  replace: (text: string, at: number, to: number, piece: string) =>
    text.slice(0, at) + piece + text.slice(to),
  many: (text: string, at: number, to: number, piece: string) =>
    text.slice(0, at) + piece.slice(0, 12).repeat(10 * (to - at)) + text.slice(at),
  line: (text: string, at: number) => {
    const [from, to] = lineAt(text, at);
    return text.slice(0, to) + text.slice(from);
  },
  withoutLine: (text: string, at: number) => {
    const [from, to] = lineAt(text, at);
    return text.slice(0, from) + text.slice(to);
  },
  indent: (text: string, at: number, to: number) => {
    const [from] = lineAt(text, at);
    return to % 2 === 0
      ? `${text.slice(0, from)} ${text.slice(from)}`
      : text.slice(0, from) + text.slice(from + 1);
  },
  lineEnds: (text: string, _: number, to: number) => text.replaceAll('\n', to % 2 === 0 ? '\r\n' : '\r'),
  everywhere: (text: string, at: number, _: number, piece: string) =>
    text.replaceAll(text.charAt(at), piece.slice(0, 20)),
  /** Bytes that are no UTF-8, as a file with them is read. */
  bytes: (text: string, at: number, to: number) => {
    const bytes = Buffer.from(text);
    for (let i = at; i < Math.min(to, bytes.length); i++) bytes[i] = (bytes[i] ?? 0) ^ (1 << (i % 8));
    return bytes.toString('utf8');
  },
  latin: (text: string) => Buffer.from(`${text}é`, 'latin1').toString('utf8'),
  wide: (text: string) => Buffer.from(text, 'utf16le').toString('utf8'),
} satisfies Record<string, (text: string, at: number, to: number, piece: string) => string>;

const LONGEST = 300_000;

export const editedText = (text: string, edits: readonly TextEdit[]): string =>
  edits.reduce((so, { way, from, length, piece }) => {
    const at = from % (so.length + 1);
    return WAYS[way](so, at, Math.min(so.length, at + length), piece).slice(0, LONGEST);
  }, text);

const edits = (pieces: readonly string[]): fc.Arbitrary<TextEdit[]> =>
  fc.array(
    fc.record({
      way: fc.constantFrom(...(Object.keys(WAYS) as (keyof typeof WAYS)[])),
      from: fc.nat(),
      length: fc.oneof(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 3000 })),
      piece: fc.oneof(fc.constantFrom(...pieces), fc.string({ unit: 'binary', maxLength: 5 })),
    }),
    { minLength: 1, maxLength: 4 },
  );
export const yamlEdits = edits(YAML_PIECES);
export const csvEdits = edits(CSV_PIECES);
