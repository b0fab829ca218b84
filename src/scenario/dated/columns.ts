import type { Model } from '../../flow/model/model.js';

/**
 * How a column of the model may differ from stage to stage: in any way; its numbers never fall; what is 0 (or
 * none, or one) stays so and what is not stays that; ids of calendars, which are cut at the dates; times by
 * row, which are cut there too.
 */
export type Rule = 'any' | 'never less' | 'as many' | 'calendar' | 'cut';

type Rules<Part> = { readonly [Column in keyof Part]?: Rule };

/**
 * Columns that may change midway. What the engine keeps of them is set anew by `flow/dated`, where it reads
 * them from the model of the present it needs nothing. All others must be the same in all stages: who adds a
 * column here has seen to it there. Draws, calendars and rules for overtime are looked at apart (`join.ts`).
 */
export const MAY_CHANGE: { readonly [Part in keyof Model]?: Rules<Model[Part]> } = {
  stations: {
    places: 'never less',
    buffer: 'any',
    reworkBuffer: 'any',
    calendar: 'calendar',
    batchMost: 'any',
    batchWait: 'any',
    lotLeast: 'any',
    lotMost: 'as many',
    lotWait: 'any',
  },
  // `amount` is looked at by kind.
  resources: { amount: 'any', calendar: 'calendar', shifts: 'cut' },
  supplies: { level: 'any', lot: 'any', lateChance: 'any', planTimes: 'cut', planLots: 'cut' },
  companions: { returnCalendar: 'calendar' },
  routes: { target: 'never less' },
  steps: {
    workCalendar: 'calendar',
    passes: 'as many',
    learnExponent: 'as many',
    learnCumulative: 'any',
    learnFloor: 'any',
    sampleN: 'as many',
    factorTable: 'any',
  },
  sideBySide: { people: 'any' },
  chances: { base: 'any', chance: 'any' },
  thens: { limit: 'any', scrapAtLimit: 'any' },
  lanes: {
    trucks: 'never less',
    capacity: 'any',
    rule: 'any',
    wait: 'any',
    bank: 'any',
    docksFrom: 'any',
    docksTo: 'any',
    loadCalendar: 'calendar',
    driveCalendar: 'calendar',
    unloadCalendar: 'calendar',
    timetable: 'cut',
  },
  pulseLines: { takt: 'any', calendar: 'calendar' },
  failures: { repairCalendar: 'calendar' },
};

/** Parts of the model that are compared, and what to say of those that differ in what may not change. */
export const PARTS = {
  siteNames: 'other sites',
  stations: 'other stations, or others of their keys',
  resources: 'other crews, feeders, supplies, carriers or equipment',
  supplies: 'other supplies, or another way to order them',
  companions: 'other carriers or teams, or others of their steps or people',
  routes: 'other feeders, or others of their keys',
  steps: 'other steps, or steps with other stations, settings, people, equipment, parts or conditions',
  sideBySide: 'other steps side by side',
  slots: 'other defects',
  quality: 'other inspections or holds',
  chances: 'chances by other options',
  repairTimes: 'repair times by other options',
  thens: 'something else that follows a find',
  lanes: 'other lanes, or others of their sites',
  pulseLines: 'other pulse lines',
  failures: 'other failures',
  outages: 'other stations or lanes of outages',
} as const satisfies Partial<Record<keyof Model, string>>;
export type ComparedPart = keyof typeof PARTS;

/** What to say of a column of numbers that fall, or that come to be or cease to be. */
export const WORDS: Readonly<Record<string, string>> = {
  places: 'fewer places',
  trucks: 'fewer trucks',
  target: 'a lower stock',
  lotMost: 'units taken in lots that were not, or the reverse',
  passes: 'several passes instead of one, or the reverse',
  learnExponent: 'learning where there was none, or the reverse',
  sampleN: 'a sample where there was none, or the reverse',
};

export const ruleOf = (part: ComparedPart, column: string): Rule | undefined =>
  (MAY_CHANGE[part] as Readonly<Record<string, Rule>> | undefined)?.[column];
