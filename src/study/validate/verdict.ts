import { listed } from '../lists.js';
import { normalQuantile } from '../statistics/proportion.js';
import { figure } from './cause.js';
import type { Judged } from './judge.js';
import type { Cause, Use } from './results.js';
import type { Topic } from './seen/measures.js';

interface UseOf {
  readonly use: string;
  readonly needs: readonly Topic[];
}
const USES: readonly UseOf[] = [
  { use: 'rates up to that of the log', needs: ['rate'] },
  { use: 'dates of units', needs: ['rate', 'lead time'] },
  { use: 'how large buffers have to be', needs: ['units inside'] },
  { use: 'what rework costs', needs: ['quality'] },
];

/** What the model may be used for: each use against the measures that it stands on. */
export const usesOf = (judged: readonly Judged[]): Use[] =>
  USES.map(({ use, needs }) => {
    const its = judged.filter(
        ({ measure, middle }) => needs.includes(measure.topic) && Number.isFinite(middle),
      ),
      against = its.filter(({ agrees }) => !agrees);
    const [worst] = against.toSorted((a, b) => b.t - a.t);
    if (its.length === 0) return { use, may: null, why: 'the log does not tell' };
    if (worst === undefined)
      return {
        use,
        may: true,
        why: its.length === 1 ? 'the log agrees' : `the log agrees in all ${its.length} measures`,
      };
    const { measure, middle } = worst,
      where = measure.of === 'whole line' ? '' : ` at ${measure.of}`;
    return {
      use,
      may: false,
      why:
        `${measure.what}${where}: ${figure(measure, measure.value)} in the log, ` +
        `${figure(measure, middle)} in the model`,
    };
  });

export function sentenceOf(uses: readonly Use[], causes: readonly Cause[]): string {
  const may = uses.filter((each) => each.may === true).map(({ use }) => use),
    not = uses.filter((each) => each.may === false).map(({ use }) => use);
  if (not.length === 0 && causes.length === 0)
    return may.length === 0
      ? 'The log is too short to tell whether the model is right.'
      : `The log is not against the model. Use it for ${listed(may, 'and')}.`;
  if (not.length === 0)
    return (
      'What the line brings about agrees with the log, but not all inputs do. ' +
      `Use it for ${listed(may, 'and')} with care.`
    );
  return may.length === 0
    ? `The model does not agree with the log. Do not use it for ${listed(not, 'and')} before it is put right.`
    : `Use the model for ${listed(may, 'and')}, not for ${listed(not, 'and')}.`;
}

export function causeOf(uses: readonly Use[], [first, ...others]: readonly Cause[]): string {
  if (first !== undefined) {
    const following = others.filter((each) => each.follows).length,
      more = others.length - following,
      these = more === 0 ? 'it' : 'these';
    return [
      `Strongest evidence: ${first.words}.`,
      ...(more === 0 ? [] : [`${more} more ${more === 1 ? 'input does' : 'inputs do'} not agree.`]),
      ...(following === 0
        ? []
        : [`${following} more ${following === 1 ? 'gap' : 'gaps'} may follow from ${these}.`]),
    ].join(' ');
  }
  return uses.some(({ may }) => may === false)
    ? 'None of the inputs that the log shows explains the gap.'
    : 'No input is seen to differ.';
}

/** Relative half-width of a mean that a time study should come to. */
const WANTED = 0.05,
  TWO_SIDED = 0.975;

/** What to measure next. Visits to time: (z cv / 5 %)^2 (Law 2015, sec. 9.4; from memory). */
export function nextOf(
  uses: readonly Use[],
  [first]: readonly (Cause & { readonly judged: Judged })[],
): string {
  if (first === undefined)
    return uses.some(({ may }) => may === false)
      ? 'Write down what the log does not show: stops of stations, missing parts, and why units wait.'
      : 'Nothing stands out. Validate again when the log has grown.';
  const { measure } = first.judged,
    { of, topic, value, sd = 0 } = measure;
  if (topic === 'minutes') {
    const z = (normalQuantile(TWO_SIDED) * sd) / (value * WANTED),
      visits = Math.max(10, Math.ceil(z * z));
    return (
      `Time ${visits} visits of ${of}, stops apart, and put the times into the scenario: ` +
      'that tells the mean to 5 %.'
    );
  }
  if (topic === 'people') return `Ask who of ${of} was there in these weeks, shift by shift.`;
  return (
    `Have ${of} looked over a second time on 50 units: ` +
    'what it finds, what it misses, and what comes to it.'
  );
}
