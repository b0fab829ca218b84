import type { StationStep } from '../../scenario/types/steps.js';
import type { InspectionResult } from '../../study/sections/inspections.js';
import { HARDLY, inHundred } from './words.js';

/** Shares of the units that a step looked at, 0..1. */
export interface Found {
  readonly mended: number;
  readonly scrapped: number;
}

export const foundAt = (row: InspectionResult | undefined): Found | undefined =>
  row === undefined
    ? undefined
    : { mended: row.repairedPer100.mean / 100, scrapped: row.scrappedPer100.mean / 100 };

/** Why shares at one sign need not add to 100. */
export const SHARES =
  'Shares that pass are of first visits; mended there, sent back and scrapped are of all visits, and one ' +
  'may be both mended and sent back, so they need not add to 100.';

/** What else becomes of units that a step looks at, but to be sent back, which an arc tells. */
export function othersText({ finds, fails }: StationStep, found: Found | undefined): string[] {
  const kinds = new Set(
      [...Object.values(finds), ...(fails === undefined ? [] : [fails])].map(({ then }) => then.kind),
    ),
    told = (share: number, what: string): string[] =>
      share < HARDLY ? [] : [`${share < 0.005 ? inHundred(share) : Math.round(100 * share)} ${what}`];
  return [
    ...(found !== undefined
      ? [...told(found.mended, 'mended there'), ...told(found.scrapped, 'scrapped')]
      : [
          ...(kinds.has('repair') ? ['some mended there'] : []),
          ...(kinds.has('scrap') ? ['some scrapped'] : []),
        ]),
    ...(kinds.has('carry') ? ['others go on, noted'] : []),
  ];
}
