import type { BufferResults } from '../../study/buffers/results.js';
import { exact, number } from '../../study/format.js';
import { type Line, sentences } from './first.js';
import { lastUnitLine } from './lines/last-unit.js';

/** More would not be read on a first screen; the table of places has them all. */
const MOST_SPOTS = 4;

/** What to do: the places of each spot, those that change most first, with what the floor for them costs. */
export function placesLine(results: BufferResults, isSettled: boolean): Line {
  const { spots, chosen, present, currency } = results,
    changed = spots
      .filter((spot) => spot.chosen !== spot.present)
      .sort((a, b) => Math.abs(b.chosen - b.present) - Math.abs(a.chosen - a.present)),
    told = changed
      .slice(0, MOST_SPOTS)
      .map((spot) => `${spot.name} ${exact(spot.present)} to ${exact(spot.chosen)}`),
    left = changed.length - told.length,
    runs = results.answer.toSettle === null ? 'more' : `about ${exact(results.answer.toSettle)}`,
    isPriced = chosen.costPerDay !== null && present.costPerDay !== null;
  if (changed.length === 0)
    return { brief: 'Leave the waiting places as they are today.', more: floorText(results) };
  return {
    brief: sentences(
      isSettled ? 'Change waiting places:' : `Simulate ${runs} builds. If settled:`,
      `${told.join(', ')}${left === 0 ? '' : `, and ${exact(left)} more`}.`,
      isPriced
        ? `Floor space: ${number(chosen.costPerDay)} ${currency ?? ''} a day, not ` +
            `${number(present.costPerDay)}.`
        : '',
    ),
    more: sentences('Do all of it or none: parts of it were not tried.', floorText(results)),
  };
}

/** By when with the layout chosen, and today. */
export const datesOf = ({ lastUnit: { chosen, present }, plannedEnd }: BufferResults): Line =>
  lastUnitLine(chosen, { of: 'with them', plannedEnd, today: present });

/** What is not known of the floor. */
const floorText = ({ chosen, present }: BufferResults): string =>
  chosen.costPerDay === null || present.costPerDay === null
    ? 'The scenario gives a waiting place no price.'
    : 'What the move costs is not known here.';
