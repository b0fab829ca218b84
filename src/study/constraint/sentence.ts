import { bounds, intervalName, mean } from '../format.js';
import type { Thing } from '../reliefs/thing.js';
import type { Estimate } from '../statistics/estimate.js';
import type { ConstraintResult, Tried } from './results.js';

/** What stops the build, in a sentence or two; a cause is named only if more of it was tried and helped. */
export function constraintSentence(found: Omit<ConstraintResult, 'sentence'>): string {
  const { outcome, culprit, tried, waiting } = found,
    [first] = waiting;
  switch (outcome) {
    case 'rate asked':
      return tried.length === 0
        ? 'The rate asked is what limits it: it is held.'
        : `What arrives is what limits it: none of the ${tried.length} likeliest that were tried brings more.`;
    case 'not settled':
      return (
        'What stops it is not settled: one replication shows no gain.' +
        (first === undefined ? '' : ` Most units wait for ${calledThing(first.thing)}.`)
      );
    case 'none helps':
      return tried.length === 0
        ? 'Nothing of which there could be more was found to try.'
        : `No single one of the ${tried.length === 1 ? 'one' : tried.length} likeliest that were tried helps: ` +
            `${tried.map(({ what, gain }) => `${what} ${gainText(gain)}`).join(', ')}. ` +
            'Either two things are short together, or what limits it was not tried.';
    case 'proven': {
      const others = tried.filter((each) => each !== culprit);
      return (
        `${capital(stopsIt(found) ?? '')}.` +
        (others[0] === undefined
          ? ''
          : ` Next of the ${tried.length} that were tried: ${others[0].what}, ${gainText(others[0].gain)}.`)
      );
    }
  }
}

/** `the station colour booth stops it: one place more at colour booth brings 0.3 a day (95 % CI 0.2 to 0.4)`. */
export const stopsIt = ({ culprit }: Pick<ConstraintResult, 'culprit'>): string | null =>
  culprit === null ? null : `${calledThing(culprit.thing)} stops it: ${bringsText(culprit)}`;

const bringsText = ({ what, gain }: Tried): string =>
  `${what} brings ${mean(gain)} a day more (${intervalName(gain.level)} ${bounds(gain)})`;

const gainText = (gain: Estimate): string => `${mean(gain)} a day (${bounds(gain)})`;

/** As a planner calls it: `the station colour booth`, `room ahead of the oven`. */
export function calledThing({ kind, name, site }: Thing): string {
  switch (kind) {
    case 'room':
      return `room ahead of ${name}`;
    case 'hours':
      return `the hours of ${name}`;
    case 'crew':
    case 'team':
      return `the ${kind} ${name} (${site})`;
    case 'supply':
      return `the supply of ${name}`;
    default:
      return `the ${kind} ${name}`;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
