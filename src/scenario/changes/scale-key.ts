import { saySeen } from '../file/problem.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { nearest } from '../values/nearest.js';
import { isRawMap, listOf, mapOf } from '../values/raw.js';
import { SCALES, type Scale, type ScaleOf, scaledScenario, WIDEST } from './scaled.js';
import { namesIn } from './times.js';

/** What is wrong, and at which key of the map. */
type Fault = Omit<Finding, 'path'> & { readonly key?: string };

/** What a change by a factor is asked as: `{ spread: 1.5, of: coachworks }`. */
const WANTED =
  'a map with one of the keys spread, times and stops, each with a factor, and perhaps of, such as ' +
  '{ spread: 1.5, of: coachworks }';
/** A larger factor is a slip. */
const MOST = 10;

/** Reads a scale; names are looked for when it is done. */
export function readScale(given: unknown): Scale | { readonly fault: Fault } {
  if (!isRawMap(given)) return { fault: { wanted: WANTED, seen: saySeen(given) } };
  const known = [...SCALES, 'of'],
    odd = Object.keys(given).find((key) => !known.includes(key)),
    asked = SCALES.filter((key) => key in given),
    [what] = asked;
  if (odd !== undefined)
    return {
      fault: {
        wanted: `one of the keys ${known.join(', ')}`,
        seen: saySeen(odd),
        suggestion: nearest(odd, known),
        key: odd,
        atKey: true,
      },
    };
  if (what === undefined || asked.length > 1) return { fault: { wanted: WANTED, seen: saySeen(given) } };
  const factor = given[what],
    names = listOf(given['of']);
  if (!isFactor(what, factor))
    return { fault: { wanted: factorWanted(what), seen: saySeen(factor), key: what } };
  if ('of' in given && (names.length === 0 || !names.every((name) => typeof name === 'string')))
    return { fault: { wanted: 'a name, or a list of names', seen: saySeen(given['of']), key: 'of' } };
  return { what, factor, of: names as readonly string[] };
}

const isFactor = (what: ScaleOf, factor: unknown): factor is number =>
  typeof factor === 'number' && (what === 'times' ? factor > 0 : factor >= 0) && factor <= MOST;

const factorWanted = (what: ScaleOf): string =>
  what === 'times' ? `a factor above 0, at most ${MOST}` : `a factor from 0 to ${MOST}`;

/** What there would have to be, for it to be scaled. */
const OF_SUCH: Readonly<Record<ScaleOf, string>> = {
  spread: 'a time that is drawn',
  times: 'a time',
  stops: 'a repair or an outage',
};
const IN_WORDS: Readonly<Record<ScaleOf, readonly [one: string, many: string]>> = {
  spread: ['the spread of 1 time', 'the spread of @ times'],
  times: ['1 time', '@ times'],
  stops: ['the length of 1 repair or outage', 'the length of @ repairs and outages'],
};

/** The scenario with the scale, and what it does in words; or what is wrong with it there. */
export function withScale(
  scenario: Scenario,
  scale: Scale,
): { readonly scenario: Scenario; readonly words: string } | { readonly fault: Fault } {
  const { what, factor, of } = scale,
    names = namesIn(scenario),
    unknown = of.find((name) => !names.has(name));
  if (unknown !== undefined)
    return {
      fault: {
        wanted: 'the name of a site, station, step, feeder, lane, supply or of carriers',
        seen: saySeen(unknown),
        suggestion: nearest(unknown, names),
        key: 'of',
      },
    };
  const { scenario: done, count, cut, tooWide } = scaledScenario(scenario, scale),
    where = of.length === 0 ? 'the scenario' : of.join(', ');
  if (count === 0)
    return {
      fault: { wanted: `${OF_SUCH[what]} in ${where}`, seen: 'none', key: of.length > 0 ? 'of' : what },
    };
  if (tooWide > 0)
    return {
      fault: {
        wanted: `a spread of at most ${WIDEST} means`,
        seen: `${factor}, with which ${tooWide} of ${count} times would have more`,
        key: what,
      },
    };
  const [one, many] = IN_WORDS[what];
  return {
    scenario: done,
    words:
      `the factor on ${count === 1 ? one : many.replace('@', String(count))}` +
      `${of.length === 0 ? '' : ` of ${where}`}${cut > 0 ? `, of which ${cut} cut at 0` : ''}`,
  };
}

/** As a path is told of other changes: `scale spread of coachworks`. */
export const scalePath = ({ what, of }: Scale): string =>
  `scale ${what}${of.length === 0 ? '' : ` of ${of.join(', ')}`}`;

/** The same before it is read. */
export const scaleLabel = (given: unknown): string => {
  const what = SCALES.find((key) => key in mapOf(given));
  return what === undefined ? 'scale' : `scale ${what}`;
};
