import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { edited } from '../../src/scenario/file/edit-path.js';
import {
  definitionsOf,
  isNode,
  keySchema,
  type Node,
  nodesIn,
  refOf,
  waysOf,
} from '../../src/scenario/json-schema.js';
import { mapOf } from '../../src/scenario/values/raw.js';

/** A scenario in which one key has one of the least or greatest values that the schema allows. */
export interface ExtremeCase {
  /** The key, names and numbers of entries left out, and the value. */
  readonly name: string;
  readonly yaml: string;
}

const root = new URL('../../', import.meta.url),
  rules = new URL('scenarios/rules/', root);

/** Scenarios of one file each, small ones first: those of the rules, of docs/scenario.md and of all times. */
function examples(): { readonly name: string; readonly value: unknown }[] {
  const ofRules = readdirSync(rules)
    .filter((name) => name.endsWith('.yaml') && name !== '00-include.yaml')
    .map((name) => ({ name, text: readFileSync(new URL(name, rules), 'utf8') }));
  const page = readFileSync(new URL('docs/scenario.md', root), 'utf8'),
    ofPage = [...page.matchAll(/^```yaml scenario\n(.*?)^```$/gms)].map(([, text = ''], i) => ({
      name: `page ${i}`,
      text,
    }));
  return [...ofRules, ...ofPage, ...TIMES.map((time) => ({ name: time, text: withTime(time) }))]
    .sort((a, b) => a.text.length - b.text.length)
    .map(({ name, text }) => ({ name, value: parse(text) as unknown }));
}

const TIMES = [
  '{ low: 35 min, likely: 42 min, high: 60 min }',
  '{ low: 35 min, likely: 42 min, high: 60 min, shape: triangular }',
  '{ low: 20 min, high: 30 min }',
  '{ mean: 42 min, cv: 0.3 }',
  '{ mean: 42 min, sd: 12 min, shape: gamma }',
  '{ constant: 20 min }',
  '{ uniform: { low: 20 min, high: 30 min } }',
  '{ triangular: { low: 35 min, likely: 42 min, high: 60 min } }',
  '{ pert: { low: 35 min, likely: 42 min, high: 60 min } }',
  '{ exponential: { mean: 2 h } }',
  '{ erlang: { mean: 2 h, phases: 3 } }',
  '{ gamma: { mean: 42 min, cv: 0.3 } }',
  '{ lognormal: { mean: 42 min, cv: 0.3 } }',
  '{ weibull: { mean: 42 min, cv: 0.5 } }',
  '{ weibull: { shape: 1.5, scale: 40 min } }',
  '{ normal: { mean: 42 min, sd: 8 min, low: 20 min, high: 70 min } }',
  '{ discrete: { 10 min: 20 %, 30 min: 80 % } }',
  '{ mixture: [{ share: 80 %, time: 20 min }, { share: 20 %, time: { mean: 2 h, cv: 0.5 } }] }',
];
const withTime = (time: string): string => `scenario: Times
programme: { start: 2027-03-01, quantity: 5, rate: { per day: 2 } }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: ${time} }]
`;

type Path = readonly (string | number)[];
/** A value that stands, or may stand, at a path of an example. */
interface Spot {
  readonly address: string;
  readonly path: Path;
  readonly ways: readonly Node[];
  /** What stands there. */
  readonly value?: unknown;
}

const SCHEMA = keySchema(),
  DEFINITIONS = definitionsOf(SCHEMA);
const resolved = (node: Node): Node => {
  const ref = refOf(node);
  return ref === undefined ? node : (DEFINITIONS[ref] ?? node);
};
function allWays(node: Node): Node[] {
  const whole = resolved(node),
    ways = waysOf(whole);
  return ways.length === 1 && ways[0] === whole ? [whole] : ways.flatMap(allWays);
}
const propertiesOf = (way: Node): Readonly<Record<string, Node>> =>
  mapOf(way['properties']) as Readonly<Record<string, Node>>;

function fits(way: Node, value: unknown): boolean {
  if (Array.isArray(value)) return way['type'] === 'array';
  if (!isNode(value)) return way['type'] !== 'array' && way['type'] !== 'object';
  return (
    way['type'] === 'object' &&
    Object.keys(value).every((key) => key in propertiesOf(way) || isNode(way['additionalProperties']))
  );
}

function* spotsIn(node: Node, value: unknown, path: Path, address: string): Iterable<Spot> {
  const ways = allWays(node);
  if (path.length > 0) yield { address, path, ways, value };
  for (const way of ways.filter((each) => fits(each, value))) {
    const items = nodesIn(way['items']).slice(0, 1);
    for (const inner of Array.isArray(value) ? items : [])
      for (const [i, item] of (value as unknown[]).entries())
        yield* spotsIn(inner, item, [...path, i], `${address}#`);
    if (!isNode(value) || Array.isArray(value)) continue;
    const own = propertiesOf(way),
      others = nodesIn(way['additionalProperties']).slice(0, 1);
    for (const [key, inner] of Object.entries(own)) {
      const here = address === '' ? key : `${address} › ${key}`;
      if (Object.hasOwn(value, key)) yield* spotsIn(inner, value[key], [...path, key], here);
      else yield { address: here, path: [...path, key], ways: allWays(inner) };
    }
    for (const [key, inner] of Object.entries(value))
      for (const other of key in own ? [] : others)
        yield* spotsIn(other, inner, [...path, key], `${address} › *`);
  }
}

const TINY = 1e-9;
const DAY = /^\d{4}-\d{2}-\d{2}/,
  DAYS = ['1900-01-01', '2027-03-01', '2199-12-31'];
const TEXTS: readonly (readonly [sample: string, extremes: readonly string[]])[] = [
  ['20 min', ['0 min', '0.000001 s', '1 s', '36600 days']],
  ['8 %', ['0 %', '100 %']],
  ['2027-03-01', DAYS],
  ['08:00', ['0:00', '23:59']],
  ['06:00-14:30', ['00:00-24:00', '00:00-00:01', '23:59-23:59']],
];

/** The least and the greatest values of a way to write something, zero and one where it allows them. */
function extremesOf(way: Node, value: unknown): readonly unknown[] {
  const { type } = way;
  if (type === 'boolean') return [true, false];
  if ('const' in way) return [way['const']];
  if (Array.isArray(way['enum'])) return way['enum'];
  if (type === 'integer' || type === 'number') {
    const above = way['exclusiveMinimum'],
      least = Number(way['minimum'] ?? (typeof above === 'number' ? above + TINY : -1e300)),
      most = Number(way['maximum'] ?? 1e300);
    const numbers = type === 'integer' ? [least, 0, 1, most] : [least, TINY, 0, 1, most];
    return [...new Set(numbers.filter((each) => least <= each && each <= most))];
  }
  // A day, or a day and a clock time, is checked as it is read.
  if (type === 'string' && DAY.test(String(value))) return [...DAYS, '2027-03-01 00:00', '2199-12-31 24:00'];
  if (type !== 'string' || typeof way['pattern'] !== 'string') return [];
  const form = new RegExp(way['pattern']);
  // A name may be anything.
  if (form.test('any name')) return [];
  return TEXTS.flatMap(([sample, extremes]) => (form.test(sample) ? extremes : []));
}

/** Each key that the schema has, in the smallest example that holds its map, at each end of what it allows. */
export function extremeCases(): ExtremeCase[] {
  const cases = new Map<string, ExtremeCase>();
  for (const { value } of examples()) {
    for (const spot of spotsIn(SCHEMA, value, [], '')) {
      const { address, path, ways } = spot;
      for (const extreme of ways.flatMap((way) => extremesOf(way, spot.value))) {
        const name = `${address}: ${String(extreme)}`;
        if (!cases.has(name)) cases.set(name, { name, yaml: JSON.stringify(edited(value, path, extreme)) });
      }
    }
  }
  return [...cases.values()];
}

/** What asks for more than a few seconds: a million of something, centuries; each is run with the slow tests. */
export const HEAVY: ReadonlySet<string> = new Set([
  'programme › until: 2199-12-31',
  'programme › quantity: 10000000',
  'calendars › * › shutdowns# › to: 2199-12-31',
  'sites › * › stations › * › places: 1000000',
  'sites › * › stations › * › changeover › from to › * › *: 36600 days',
  'feeders › * › stock: 1000000',
  'feeders › * › route# › work: 36600 days',
  'feeders › * › route# › process: 36600 days',
  'feeders › * › route# › finds › * › repair: 36600 days',
  'supplies › * › reorder › level: 1000000',
  'supplies › * › safety stock: 1000000',
  'lanes › * › trucks: 1000000',
  'lanes › * › arrival bank: 1000000',
]);

/** A sixth of the cases is run with the quick tests, the others with the slow ones. */
export const isQuick = (index: number): boolean => index % 6 === 0;
