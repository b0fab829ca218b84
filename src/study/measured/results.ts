import type { TableRead } from '../../records/table/table.js';
import type { FitOfChance } from '../chances/chance.js';
import type { Survival } from '../chances/kaplan-meier.js';
import type { FitOfSpans } from '../chances/stops.js';
import type { Bounded } from '../chances/two-looks.js';
import { RESULTS_VERSION } from '../head.js';
import { PROGRAM_VERSION } from '../version.js';
import type { Entry } from './entry.js';

/** What any part of these results says besides its numbers. */
export interface Told {
  /** In plain sentences. */
  readonly told: readonly string[];
  /** Values for a scenario. */
  readonly entries: readonly Entry[];
  /** Values that have no place in the scenario, and why: sentences. */
  readonly notWritten: readonly string[];
}

/** What one inspection finds of one kind of defect. */
export interface LookResult {
  readonly step: string;
  /** Of units that came to it without the defect having been found; by option where asked. */
  readonly found: FitOfChance;
  /** Share of what is there that it finds; null where the counts do not tell. */
  readonly finds: Bounded | null;
}

/** One kind of defect, made at one step; `failed` of a test. */
export interface ChanceResult extends Told {
  readonly defect: string;
  /** Null where it is not known, or of a test. */
  readonly madeAt: string | null;
  readonly looks: readonly LookResult[];
  /** Of units that came to the first inspection, found there or later; null without any. By option. */
  readonly found: FitOfChance | null;
  /** Share of units on which it is made; null where the counts do not tell. */
  readonly made: Bounded | null;
  readonly from: string | null;
  readonly to: string | null;
}

export interface LearningResult extends Told {
  readonly step: string;
  readonly n: number;
  /** Least and greatest number of a unit. */
  readonly units: { readonly from: number; readonly to: number };
  readonly learns: boolean;
  /** What each doubling leaves; null where the times are too few. */
  readonly rate: Bounded | null;
  readonly curve: 'unit' | 'cumulative mean' | null;
  /** Lowest time as a share of the first unit's. */
  readonly floor: number | null;
  /** Plain times, without learning, minutes: as of the first unit where it learns. */
  readonly mean: number;
  readonly cv: number | null;
  readonly distribution: string;
  readonly from: string | null;
  readonly to: string | null;
  /** Each time, minutes, with the number of its unit. */
  readonly times: readonly { readonly unit: number; readonly minutes: number }[];
  /** Minutes along the curve at units of a doubling each; none where it does not learn. */
  readonly line: readonly { readonly unit: number; readonly minutes: number }[];
}

/** How long spans last, with the share that lasts longer than any time. */
export interface SpansResult extends Omit<FitOfSpans, 'survival'> {
  /** Standard error null once nobody is left. */
  readonly survival: readonly (Omit<Survival, 'standardError'> & { readonly standardError: number | null })[];
}

export interface StopsResult extends Told {
  readonly station: string;
  readonly failures: number;
  /** Minutes up in all, as they count. */
  readonly running: number;
  /** `minutes`: as the table has them. */
  readonly counted: 'operating time' | 'calendar time' | 'minutes';
  readonly toFailure: SpansResult;
  readonly toRepair: SpansResult;
}

interface Head {
  readonly format: 'rateproof results';
  readonly version: number;
  readonly program: string;
  readonly study: 'fit';
  /** Names of the files, without folders. */
  readonly table: string;
  readonly scenarioFile: string | null;
  readonly seed: string;
  readonly rows: number;
  readonly used: number;
  readonly head: TableRead['head'];
  readonly leftOut: TableRead['leftOut'];
  readonly oddities: TableRead['oddities'];
  /** Of the records as a whole, in sentences. */
  readonly notes: readonly string[];
}
export interface ChancesResults extends Head {
  readonly of: 'chances';
  readonly chances: readonly ChanceResult[];
}
export interface LearningResults extends Head {
  readonly of: 'learning';
  readonly steps: readonly LearningResult[];
}
export interface StopsResults extends Head {
  readonly of: 'stops';
  readonly stations: readonly StopsResult[];
}
/** What `fit` found besides times. */
export type MeasuredResults = ChancesResults | LearningResults | StopsResults;

/** The parts of which values may be written. */
export const partsOf = (results: MeasuredResults): readonly Told[] =>
  results.of === 'chances' ? results.chances : results.of === 'learning' ? results.steps : results.stations;

/** What the head of the results says of the records. */
export const headOf = (
  { rows, head, leftOut, oddities, used = rows - leftOut.length }: TableRead,
  of: Pick<Head, 'table' | 'scenarioFile' | 'seed'>,
  notes: readonly string[] = [],
): Head => ({
  format: 'rateproof results',
  version: RESULTS_VERSION,
  program: PROGRAM_VERSION,
  study: 'fit',
  ...of,
  rows,
  used,
  head,
  leftOut,
  oddities,
  notes,
});
