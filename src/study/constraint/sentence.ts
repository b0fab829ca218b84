import type { Thing } from '../../scenario/reliefs/thing.js';
import { bounds, capital, interval, mean } from '../format.js';
import type { ConstraintResult, Tried } from './results.js';

type Found = Omit<ConstraintResult, 'sentence'>;

/** What stops the build, in a sentence or two; a cause is named only if more of it was tried and helped. */
export function constraintSentence(found: Found): string {
  const { outcome, tried, waiting } = found,
    first = waiting.at(0),
    best = tried.at(0);
  switch (outcome) {
    case 'rate asked':
      return best === undefined
        ? 'The rate asked is what limits it: it is held.'
        : 'What arrives is what limits it: ' +
            (tried.length === 1
              ? 'the one thing that was tried brings no more.'
              : `none of the ${tried.length} things that were tried brings more.`);
    case 'not settled':
      return (
        'What stops it cannot be told from one replication.' +
        (first === undefined ? '' : ` Most units wait for ${calledThing(first.thing)}.`)
      );
    case 'none helps':
      return best === undefined
        ? 'What stops it is not known: nothing was found of which there could be more.'
        : (tried.length === 1
            ? `The one thing that was tried ${isMore(best) ? 'brings too little' : 'does not help'}: `
            : `No single thing ${isMore(best) ? 'brings enough to matter' : 'helps'}: ` +
              `the best of ${tried.length} tried is `) + `${told(best)}. ${PERHAPS_TWO}`;
    case 'proven':
      return `${capital(stopsIt(found) ?? '')}.${othersText(found)}`;
  }
}

/** Why no single thing may help. */
export const PERHAPS_TWO = 'Perhaps only two at once would help, or something that was not tried.';

/** `the station booth stops it: with one place more at booth it ships 0.3 a day more (95 % CI ..)`. */
export const stopsIt = ({ culprit }: Pick<ConstraintResult, 'culprit'>): string | null =>
  culprit === null
    ? null
    : `${calledThing(culprit.thing)} stops it: with ${culprit.what} it ships ${mean(culprit.gain)} a day ` +
      `more (${interval(culprit.gain)})`;

/** Whether a trial surely brings units, and more than do not matter. */
export const helps = (tried: Tried, zone: number): boolean => isMore(tried) && tried.gain.mean > zone;

/** Surely, be it ever so little. */
export const isMore = ({ gain: { low } }: Tried): boolean => low !== null && low > 0;

/** What became of the other trials, behind that of the culprit. */
function othersText({ culprit, tried, zone }: Found): string {
  const others = tried.filter((each) => each !== culprit),
    next = others.find((each) => helps(each, zone));
  if (others.length === 0) return '';
  if (next === undefined)
    return others.length === 1
      ? ' The other one that was tried does not help.'
      : ` None of the ${others.length} others that were tried helps.`;
  // An hour more may bring more than the thing that is named.
  const ahead = next.gain.mean - (culprit?.gain.mean ?? 0);
  return ahead > zone
    ? ` Better still: ${told(next)}.`
    : ahead >= -zone
      ? ` As good: ${told(next)}.`
      : ` Next best of ${tried.length} tried: ${told(next)}.`;
}

/** `one truck more on road, 0.02 a day more (-0.01 to 0.05)`; what does harm is not called more. */
const told = ({ what, gain }: Tried): string =>
  `${what}, ${mean(gain)} a day${gain.mean > 0 ? ' more' : ''} (${bounds(gain)})`;

/** As a planner calls it, ahead of a verb in the singular: `the station booth`, `the number of dollies`. */
export function calledThing({ kind, name, site }: Thing): string {
  switch (kind) {
    case 'room':
      return `the room ahead of ${name}`;
    case 'hours':
      return `the calendar "${name}"`;
    case 'crew':
    case 'equipment':
    case 'team':
      return `the ${kind} ${name} (${site})`;
    case 'supply':
      return `the supply of ${name}`;
    case 'carrier':
      return `the number of ${name}`;
    case 'change':
      return `the change “${name}”`;
    default:
      return `the ${kind} ${name}`;
  }
}
