import { capital, count, exact, number } from '../../../study/format.js';
import { listed } from '../../../study/lists.js';
import type { Use, ValidateResults } from '../../../study/validate/results.js';
import { about, dateText, type FirstScreen, type Line, sentences } from '../first.js';
import { boundsText, isJudged, lastDay, useLines } from './validate-told.js';

/** Uses as a headline has room for them. */
const SHORT: Readonly<Record<string, string>> = {
  'rates up to that of the log': 'rates',
  'dates of units': 'dates',
  'how large buffers have to be': 'buffers',
  'what rework costs': 'rework',
};
const MOST_WORDS = 12;

const named = (uses: readonly Use[], may: boolean | null): string[] =>
  uses.filter((each) => each.may === may).map(({ use }) => SHORT[use] ?? use);

/** Would the model have foretold these weeks, and what may it be used for. */
export function validateFirst(results: ValidateResults): FirstScreen {
  const { scenario, uses, causes, next, verdict, log, period, byDay, units } = results,
    first = dateText(period.from),
    last = byDay.at(-1);
  const isOff = uses.some(({ may }) => may === false);
  return {
    about: about(scenario),
    question: `Would the model have foretold ${first} to ${dateText(lastDay(results))}?`,
    answer: answer(results),
    sure: sure(results),
    stops: explains(results),
    toDo: { brief: next, more: '' },
    when: useFor(results),
    rests: leftOut(results),
    names: {
      stops: isOff ? 'Likely cause' : 'What differs',
      toDo: 'Measure next',
      when: 'Use it for',
      rests: 'Left out',
    },
    next:
      verdict === 'agrees'
        ? {
            what: 'What the weeks after the log bring',
            command: `rateproof forecast ${scenario.file} ${log.file} --at ${period.to}`,
          }
        : {
            what: causes.length === 0 ? 'To compare again' : 'With the inputs put right, compare again',
            command: `rateproof validate ${scenario.file} ${log.file}`,
          },
    besides:
      'Bands cover chance, not mistakes in the log. Agreement is no proof: a gap within its band is not ' +
      'seen.',
    picture: {
      title: 'Units shipped: the log in the band of the model',
      more:
        last === undefined
          ? ''
          : `By ${dateText(lastDay(results))}: ${exact(units.shipped)} in the log, ` +
            `${exact(last.low)} to ${exact(last.high)} in the model.`,
    },
  };
}

/** At most twelve words. */
function answer({ uses, causes }: ValidateResults): string {
  const may = named(uses, true),
    not = named(uses, false),
    own = causes.filter(({ follows }) => !follows);
  if (not.length === 0 && may.length === 0) return 'Not known: the log is too short to tell.';
  if (not.length === 0)
    return causes.length === 0
      ? 'Yes: the log is not against the model.'
      : `Yes, but ${count(own.length, 'input')} ${own.length === 1 ? 'differs' : 'differ'} from the log.`;
  if (may.length === 0) return 'No: the model does not agree with the log.';
  const parts = `In part: for ${listed(may, 'and')}, not for ${listed(not, 'or')}.`;
  return parts.split(' ').length <= MOST_WORDS ? parts : `In part: for ${may.length} of ${uses.length} uses.`;
}

function sure({ measures, level, replications, period }: ValidateResults): Line {
  const judged = measures.filter(isJudged),
    out = judged.filter(({ agrees }) => !agrees).length,
    rate = judged.find(({ topic }) => topic === 'rate'),
    known = `(${number(100 * level)} % for all together, ${count(replications, 'simulated build')})`;
  return {
    brief:
      out === 0
        ? `${judged.length === 1 ? 'The one measure agrees' : `All ${judged.length} measures agree`} ` +
          `${known}.`
        : `${exact(out)} of ${count(judged.length, 'measure')} ${out === 1 ? 'does' : 'do'} not agree ` +
          `${known}.`,
    more: sentences(
      `They are judged together: a model that is right is called wrong in no more than ` +
        `${number(100 * (1 - level))} of 100 such comparisons.`,
      rate === undefined
        ? ''
        : `Over these ${count(period.days, 'day')} a rate outside ${boundsText(rate)} ${rate.what} is seen.`,
    ),
  };
}

/** What differs most surely, and that other gaps may follow from it. */
function explains({ cause, causes, uses }: ValidateResults): Line {
  const [first, ...others] = causes,
    own = others.filter(({ follows }) => !follows).length,
    following = others.length - own,
    isOff = uses.some(({ may }) => may === false);
  if (first === undefined) return { brief: cause, more: '' };
  return {
    brief: sentences(
      `${capital(first.words)}.`,
      own === 0 ? '' : own === 1 ? 'One more input differs.' : `${exact(own)} more inputs differ.`,
      following === 0
        ? ''
        : `${following === 1 ? 'One more gap' : `${exact(following)} more gaps`} may follow from ` +
            `${own === 0 ? 'it' : 'these'}.`,
      isOff ? 'Other gaps may follow from it.' : '',
    ),
    more: sentences(
      ...others.map(({ words, follows }) => `${follows ? 'It may follow from another' : 'Also'}: ${words}.`),
      `This is the strongest evidence among the inputs that a log shows, no proof${
        isOff || others.length > 0 ? '; put it right first, then compare again' : ''
      }.`,
    ),
  };
}

function useFor(results: ValidateResults): Line {
  const { uses, causes } = results,
    [may, not, unknown] = [true, false, null].map((each) => named(uses, each)),
    list = (names: readonly string[] | undefined, last: string): string => listed(names ?? [], last);
  const some = (names: readonly string[] | undefined, words: string): string =>
    names === undefined || names.length === 0 ? '' : words;
  return {
    brief: sentences(
      some(may, `${capital(list(may, 'and'))}${causes.length > 0 ? ', with care' : ''}.`) || 'Nothing yet.',
      some(not, `Not for ${list(not, 'or')}.`),
      some(unknown, `Of ${list(unknown, 'and')} the log does not tell.`),
    ),
    more: useLines(results)
      .map((each) => `${capital(each)}.`)
      .join(' '),
  };
}

function leftOut({ log: { rows, used, oddities } }: ValidateResults): Line {
  const out = rows === null || used === null ? 0 : rows - used;
  return {
    brief:
      rows === null
        ? 'It is not known how many rows the log has.'
        : out === 0
          ? `None of ${count(rows, 'row')} of the log.`
          : `${exact(out)} of ${count(rows, 'row')} of the log.`,
    more: sentences(
      ...oddities.map(({ count: n, told }) => `${count(n, 'row')}: ${told.replace(/\.$/, '')}.`),
    ),
  };
}
