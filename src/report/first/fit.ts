import type { FitResults, StepResult } from '../../study/fit/results.js';
import { count, exact, number } from '../../study/format.js';
import { boundsOf, isSame } from '../../study/statistics/estimate.js';
import { warningWords } from '../charts/records/fit-words.js';
import { figure, range } from './figures.js';
import { type FirstScreen, type Line, sentences, surely } from './first.js';

type Differing = StepResult & { readonly againstScenario: NonNullable<StepResult['againstScenario']> };

/** More would not be read at a glance. */
const MOST_NAMED = 3;

/** What clocked times say of the steps, what speaks against them, and what to do with them. */
export function fitFirst(results: FitResults): FirstScreen {
  const { table, scenarioFile, steps } = results;
  return {
    about: scenarioFile === null ? table : `${table}, for ${scenarioFile}`,
    question:
      scenarioFile === null
        ? 'What do the clocked times say of the steps?'
        : 'Do the clocked times agree with the scenario?',
    answer: answer(results),
    sure: sure(results),
    stops: against(steps),
    toDo: toDo(results),
    when: leftOut(results),
    rests: weakest(steps),
    names: { stops: 'Against it', when: 'Rows', rests: 'Known worst' },
    next:
      scenarioFile === null
        ? {
            what: 'To set them against a scenario',
            command: `rateproof fit ${table} SCENARIO.yaml --out out/fitted`,
          }
        : {
            what: 'How much these inputs move the answer, once included',
            command: `rateproof simulate ${scenarioFile} --inputs uncertain`,
          },
    besides: 'Intervals cover chance, not how the times were clocked.',
    picture: {
      title: 'How times spread, and how well their mean is known',
      more: 'Each step by the mean that was clocked, which is 100 %.',
    },
  };
}

const comparedIn = (steps: readonly StepResult[]): Differing[] =>
  steps.flatMap((step) =>
    step.againstScenario === null ? [] : [{ ...step, againstScenario: step.againstScenario }],
  );

/** By how much the clocked mean is off, as a share of that in the scenario. */
const offBy = ({ mean, againstScenario: { now } }: Differing): number => mean.mean / now - 1;

const differingIn = (steps: readonly StepResult[]): Differing[] =>
  comparedIn(steps)
    .filter(({ againstScenario: { differs } }) => differs !== null)
    .sort((a, b) => Math.abs(offBy(b)) - Math.abs(offBy(a)));

/** A headline has twelve words, of which this leaves a name four. */
const shortName = (step: string): string => (step.split(/\s+/).length > 4 ? 'one step' : step);

const allOf = ({ length }: readonly StepResult[]): string =>
  length === 1 ? 'the step' : `all ${exact(length)} steps`;

/** Of a share, two digits. */
const percent = (share: number): string => `${number(Number((100 * share).toPrecision(2)))} %`;

function answer({ steps }: FitResults): string {
  const compared = comparedIn(steps),
    differing = differingIn(steps),
    [first] = differing,
    written = steps.filter(({ path }) => path !== null).length;
  if (first !== undefined) {
    const ways = new Set(differing.map(({ againstScenario: { differs } }) => differs)),
      [way] = ways.size === 1 ? ways : [],
      n = differing.length,
      which =
        compared.length === n ? `all ${exact(n)} steps` : `${exact(n)} of ${count(compared.length, 'step')}`;
    return n === 1
      ? `No: ${shortName(first.step)} takes ${percent(Math.abs(offBy(first)))} ${way ?? ''} than it says.`
      : `No: ${which} take ${way ?? 'other times'} than it says.`;
  }
  if (compared.length > 0)
    return compared.length === 1
      ? 'As far as its times tell, the step takes what it says.'
      : `As far as the times tell, none of ${exact(compared.length)} steps differs.`;
  return written === steps.length
    ? `A scenario can include the times of ${allOf(steps)}.`
    : `A scenario can include the times of ${exact(written)} of ${count(steps.length, 'step')}.`;
}

function sure({ steps, level }: FitResults): Line {
  const [first, ...others] = differingIn(steps),
    widths = steps.map(halfWidth).filter((width) => width !== null),
    times = steps.map(({ n }) => n);
  const means =
    widths.length === 0
      ? 'How far chance moves the means is not known'
      : `Means are known to within ${spread(widths, percent)} ` +
        `(${surely(level)}, ${spread(times, exact)} times a step)`;
  if (first === undefined) return { brief: `${means}.`, more: '' };
  const told = ({ step, againstScenario: { interval, now } }: Differing): string =>
    `${step}: ${figure(interval)} min clocked (${range(interval)}), ${number(now)} in the scenario`;
  return {
    brief: `${told(first)}.`,
    more: sentences(
      ...others.slice(0, MOST_NAMED).map((step) => `${told(step)}.`),
      others.length > MOST_NAMED ? `And ${count(others.length - MOST_NAMED, 'step')} more.` : '',
      `All comparisons hold together (${surely(level)}). ${means}.`,
    ),
  };
}

/** `5 %`, `5 % to 12 %`. */
function spread(values: readonly number[], tell: (value: number) => string): string {
  const [least, most] = [Math.min(...values), Math.max(...values)].map(tell);
  return least === most ? (least ?? '') : `${least ?? ''} to ${most ?? ''}`;
}

/** Half of the interval of the mean over the mean; null where there is none. */
function halfWidth({ mean }: StepResult): number | null {
  const { low, high } = boundsOf(mean);
  return mean.low === null || isSame(mean) ? null : (high - low) / 2 / mean.mean;
}

function against(steps: readonly StepResult[]): Line {
  const warned = steps.toSorted((a, b) => a.rank - b.rank).filter((step) => warningWords(step).length > 0),
    [first, ...others] = warned;
  if (first === undefined)
    return { brief: 'Nothing was seen: no drift, no mixed work, no odd times, no rounding.', more: '' };
  const n = warned.length,
    all =
      steps.length === 1
        ? ''
        : `${exact(n)} of ${count(steps.length, 'step')} ${n === 1 ? 'has' : 'have'} a warning. `;
  return {
    brief: `${all}${first.step}: ${warningWords(first).join('; ')}.`,
    more: sentences(
      ...first.warnings.map(({ told }) => told),
      ...others.slice(0, MOST_NAMED).map((step) => `${step.step}: ${warningWords(step).join('; ')}.`),
      others.length > MOST_NAMED ? `And ${count(others.length - MOST_NAMED, 'step')} more.` : '',
    ),
  };
}

function toDo({ steps }: FitResults): Line {
  const written = steps.filter(({ path }) => path !== null),
    left = steps.filter(({ path }) => path === null),
    warned = steps.filter((step) => warningWords(step).length > 0).toSorted((a, b) => a.rank - b.rank);
  const more = sentences(
    ...left.slice(0, MOST_NAMED).map(({ step, notWritten }) => `${step}: ${notWritten ?? 'not written.'}`),
    left.length > MOST_NAMED ? `And ${count(left.length - MOST_NAMED, 'step')} more.` : '',
  );
  if (written.length === 0) return { brief: 'Give the steps of the table work in the scenario first.', more };
  const [first] = [...differingIn(steps), ...warned];
  return {
    brief:
      (first === undefined ? 'Put' : `Look at ${first.step} first, then put`) +
      ' fitted.yaml beside the scenario, with include: [fitted.yaml].',
    more,
  };
}

function leftOut({ rows, used, oddities }: FitResults): Line {
  if (used === rows) return { brief: `All ${exact(rows)} are used.`, more: '' };
  const out = oddities.filter(({ rule }) => rule === 'left out'),
    told = out.map(({ kind, count: n }) => `${kind} ${exact(n)}`);
  return {
    brief: `${exact(rows - used)} of ${exact(rows)} are left out: ${told.slice(0, MOST_NAMED).join(', ')}${
      told.length > MOST_NAMED ? ' and others' : ''
    }.`,
    more: sentences(...out.map(({ told: each, lines }) => `Line ${lines.join(', ')}: ${each}`)),
  };
}

/** The step whose mean is known worst. */
function weakest(steps: readonly StepResult[]): Line {
  const more =
    'That those who were clocked work as others will, and that breaks and waiting are not in the times, is ' +
    'taken on trust.';
  const single = steps.find(({ n }) => n === 1);
  if (single !== undefined)
    return { brief: `${single.step}: a single time says nothing of the spread.`, more };
  const [worst] = steps
    .flatMap((step) => {
      const width = halfWidth(step);
      return width === null ? [] : [{ ...step, width }];
    })
    .sort((a, b) => b.width - a.width);
  return worst === undefined
    ? { brief: 'All times of a step are the same: their spread is not known.', more }
    : {
        brief: `${worst.step}: ${count(worst.n, 'time')}, mean known to within ${percent(worst.width)}.`,
        more,
      };
}
