import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { clockSpanOf } from '../values/quantity.js';
import { listOf, mapOf } from '../values/raw.js';

/**
 * What a shift of a crew is called: by the middle of its hours `the early shift`, `the late shift` or `the
 * night shift`, where its calendar has one of each kind at most; else by its number.
 * @param shift from 0
 */
export function shiftName(root: unknown, site: unknown, crew: unknown, shift: number): string {
  const { calendar = mapOf(site)['calendar'] } = mapOf(crew),
    calendars = mapOf(mapOf(root)['calendars']),
    hours = listOf(typeof calendar === 'string' ? mapOf(calendars[calendar])['hours'] : undefined);
  const names = hours.map(kindOf),
    name = names[shift];
  return name === undefined || names.indexOf(name) !== names.lastIndexOf(name)
    ? `shift ${shift + 1}`
    : `the ${name} shift`;
}

/** From when on the middle of a shift makes it a late one and a night one; and an early one again. */
const LATE_MIN = 14 * 60,
  NIGHT_MIN = 22 * 60 + 30,
  EARLY_MIN = 6 * 60;

function kindOf(written: unknown): 'early' | 'late' | 'night' | undefined {
  const span = typeof written === 'string' ? clockSpanOf(written) : undefined;
  if (span === undefined) return undefined;
  const length = (span.endMin - span.startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY || MINUTES_PER_DAY,
    middle = (span.startMin + length / 2) % MINUTES_PER_DAY;
  if (middle < EARLY_MIN || middle >= NIGHT_MIN) return 'night';
  return middle < LATE_MIN ? 'early' : 'late';
}
