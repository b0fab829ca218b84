import type { ConstraintResult, Tried } from '../../../study/constraint/results.js';
import { calledThing, helps, isMore, PERHAPS_TWO } from '../../../study/constraint/sentence.js';
import { capital, count, exact, uncapital } from '../../../study/format.js';
import { eachShift } from '../../constraint.js';
import { figure, range } from '../figures.js';
import { gain, type Line, NO_LINE, whole } from '../first.js';

type Found = Pick<ConstraintResult, 'outcome' | 'culprit' | 'sentence' | 'zone' | 'tried'>;

/** Of which build it is told, `with “more painters”`; at which rate it was tried, `tried at 4.4 a day`. */
interface About {
  readonly of?: string;
  readonly at?: string;
}

/**
 * What stops it, with what was tried of it and what came next; else why it is not known. A cause beside which
 * another thing brings as much is not told without that.
 */
export function stopsLine(found: Found | null, { of = '', at = '' }: About = {}): Line {
  if (found === null) return NO_LINE;
  const { culprit } = found,
    thing = culprit === null ? '' : calledThing(culprit.thing),
    about = of === '' ? '' : `${of}, `,
    lead = at === '' ? '' : `${at}: `;
  if (culprit === null) {
    const { brief, more } = unknown(found);
    return {
      brief: capital(`${about}${brief}`),
      more: more === '' ? '' : capital(`${lead}${lead === '' ? more : uncapital(more)}`),
    };
  }
  return {
    brief: `${capital(`${about}${thing}`)}${rivalText(found)}.`,
    more:
      capital(
        `${lead}${eachShift(culprit.what, found)} brings ${figure(culprit.gain)} a day ` +
          `(${range(culprit.gain)}).`,
      ) + nextBest(found),
  };
}

/** The same in a row. */
export const stopsText = (found: Found): string => whole(stopsLine(found));

/** The best of what else was tried and helps, and by how much its mean is ahead of the cause named. */
function bestOther({
  culprit,
  tried,
  zone,
}: Found): { readonly other: Tried; readonly ahead: number } | null {
  const [other] = tried
    .filter((each) => each.what !== culprit?.what && helps(each, zone))
    .sort((a, b) => b.gain.mean - a.gain.mean);
  return other === undefined ? null : { other, ahead: other.gain.mean - (culprit?.gain.mean ?? 0) };
}

function rivalText(found: Found): string {
  const best = bestOther(found);
  if (best === null || best.ahead < -found.zone) return '';
  const how = best.ahead > found.zone ? 'more still' : 'as much';
  return `; ${eachShift(best.other.what, found)} brings ${how}`;
}

/** The best of what else was tried, and whether that brings less, as much or more by its mean. */
function nextBest(found: Found): string {
  const others = found.tried.length - 1,
    best = bestOther(found);
  if (others < 1) return '';
  if (best === null)
    return others === 1
      ? ' The other thing tried brings too little to matter.'
      : ` None of the ${exact(others)} other things tried brings enough to matter.`;
  const { other, ahead } = best,
    how = ahead > found.zone ? 'more still' : ahead >= -found.zone ? 'as much' : 'next best';
  return (
    ` Of ${count(others, 'other thing')} tried, ${how}: ${eachShift(other.what, found)}, ` +
    `${figure(other.gain)} (${range(other.gain)}).`
  );
}

/** Why no cause is named, as it goes on behind something. */
function unknown(found: Found): Line {
  const { outcome, tried, sentence } = found,
    [best, second] = tried;
  if (outcome === 'not settled')
    return { brief: 'that cannot be told from one simulated build.', more: eachShift(sentence, found) };
  if (outcome === 'rate asked')
    return {
      brief: best === undefined ? 'only the rate asked.' : `only what arrives: ${none(found)} more.`,
      more: '',
    };
  if (best === undefined)
    return { brief: 'no single thing that was found.', more: eachShift(sentence, found) };
  return {
    brief: `${none(found)} more${isMore(best) ? ' that matters' : ''}.`,
    more:
      `${second === undefined ? 'It' : 'The best'} is ${eachShift(best.what, found)}, ` +
      `${gain(best.gain, ' a day')}. ${PERHAPS_TWO}`,
  };
}

const none = ({ tried }: Found): string =>
  tried.length === 1
    ? 'the one thing tried does not bring'
    : `none of ${exact(tried.length)} things tried brings`;
