import { programmeClock } from '../../scenario/programme/clock.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { standstills } from '../answer/gridlock.js';
import { count } from '../format.js';
import { countingResult } from '../loads/words.js';
import { lastUnitDates } from '../programme/dates.js';
import type { Window } from '../programme/judged-window.js';
import type { Reading } from '../sample/reading.js';
import { ratio } from '../statistics/sums.js';
import { type ComparedVariant, countingOfVariant } from './measures.js';
import type { ComparedInWeeks, CompareResults, StandResult } from './results.js';

/** What is told of a variant besides its measures. */
export function standOf(
  { name, note, changes, key, scenario }: ComparedVariant,
  readings: readonly Pick<Reading, 'outcome' | 'endedAt' | 'lastUnitDay'>[],
  level: number,
): StandResult {
  const clock = programmeClock(scenario),
    stood = readings.flatMap(({ outcome, endedAt }) => (outcome === 'gridlock' ? [endedAt] : []));
  return {
    name,
    note,
    changes,
    digest: `sha256:${key}`,
    askedPerDay: askedRate(scenario).highest,
    gridlocks: stood.length,
    standstill: standstills(stood, readings.length, clock),
    unfinished:
      scenario.programme.quantity === undefined
        ? 0
        : readings.filter(({ outcome }) => outcome !== 'finished').length,
    lastUnit: lastUnitDates(
      scenario,
      readings.map(({ lastUnitDay }) => lastUnitDay),
      clock,
      level,
    ),
  };
}

/** What a reader has to know of a variant before its values are believed. */
export function findings(
  { name, gridlocks, standstill, unfinished }: StandResult,
  replications: number,
): string[] {
  const of = (some: number): string => `${some} of ${count(replications, 'replication')}`;
  return [
    ...(standstill === null ? [] : [`${name}: ${standstill.note} (gridlock)`]),
    ...(unfinished > gridlocks
      ? [
          `${name}: not finished in ${of(unfinished)}; ` +
            'pairs without a last unit are left out of its comparison',
        ]
      : []),
  ];
}

/** Weeks over which the throughput is taken, and how units of the base are counted in them. */
export const windowResult = (base: ComparedVariant, window: Window | null): CompareResults['window'] =>
  window === null
    ? null
    : {
        from: window.from,
        to: window.to,
        workingDays: window.workingDays,
        counting: countingResult(countingOfVariant(base, window, base)),
      };

/** How the base is judged in these weeks. */
export function judgedIn(base: ComparedVariant, window: Window | null): ComparedInWeeks['judged'] {
  const counting = window === null ? null : countingOfVariant(base, window, base);
  return {
    window,
    askedPerDay: askedRate(base.scenario).highest,
    heldIn: (seen) => ratio(counting?.shipped(seen) ?? NaN, window?.workingDays ?? NaN),
  };
}

/** As JSON has it: null for what is no number. */
export const finite = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;
