import type { Distribution } from '../../random/distribution.js';
import type { FailureColumns, OutageColumns } from './failures.js';
import type { LaneColumns } from './lanes.js';
import type { StageOfModel } from './later.js';
import type { ProgrammeColumns } from './programme.js';
import type {
  ChanceColumns,
  QualityColumns,
  RepairTimeColumns,
  SlotColumns,
  ThenColumns,
} from './quality.js';
import type { CompanionColumns, ResourceColumns, SupplyColumns } from './resources.js';
import type { PulseLineColumns, SideBySideColumns, StationColumns } from './stations.js';
import type { RouteColumns, StepColumns } from './steps.js';
import type { CalendarColumns, OvertimeColumns } from './time.js';

/**
 * The compiled model: what `scenario` hands to the engine. Integers and typed arrays; names only for reports.
 *
 * Conventions
 * - Time is minutes since the programme's start instant, a float.
 * - An id is an index into the columns of its kind; -1 says "none".
 * - `UNLIMITED` stands for a capacity without a limit.
 * - A ragged column `x` of rows is `xStart` (length rows + 1) and flat columns: row r is
 *   xStart[r] .. xStart[r + 1] - 1.
 * - A draw id (`...Draw`) is an index into `draws`; each draw has a stream of its own, named for the thing
 *   and purpose.
 */
export const UNLIMITED = 0x3fffffff;

export interface NamedDraw {
  /** Stream name: `thing/purpose`, unique. */
  readonly name: string;
  readonly distribution: Distribution;
}

export interface Model {
  /** Working calendars; calendar id -1 is "always". Complete up to `horizon`. */
  readonly calendars: readonly CalendarColumns[];
  /**
   * The time to which calendars are compiled; a run that gets there stops and says so. `Infinity` where no
   * calendar is used.
   */
  readonly horizon: number;
  /** Rules that decide on overtime; rule r has bit 1 << r in the calendars. */
  readonly overtime: readonly OvertimeColumns[];
  readonly draws: readonly NamedDraw[];

  readonly siteNames: readonly string[];
  readonly stations: StationColumns;
  readonly resources: ResourceColumns;
  readonly supplies: SupplyColumns;
  /** Carriers and teams that stay with a unit over several steps. */
  readonly companions: CompanionColumns;

  /** Options of a unit; each unit has one value of each option. Cumulative chances, last = 1. */
  readonly options: readonly {
    readonly name: string;
    readonly values: readonly string[];
    readonly cumulative: Float64Array;
  }[];
  readonly routes: RouteColumns;
  readonly steps: StepColumns;
  /** Steps that are done side by side on one unit in one place. */
  readonly sideBySide: SideBySideColumns;

  readonly slots: SlotColumns;
  readonly chances: ChanceColumns;
  readonly repairTimes: RepairTimeColumns;
  readonly thens: ThenColumns;
  /** Columns of rules 8 to 10 by step, route and find. */
  readonly quality: QualityColumns;

  readonly lanes: LaneColumns;
  readonly pulseLines: PulseLineColumns;
  readonly failures: FailureColumns;
  readonly outages: OutageColumns;
  readonly programme: ProgrammeColumns;
  /**
   * How the model is before some changes are there, in order of time, each up to its time; all else here is
   * how it is from the last of them on. Empty: it is the same from the first day on.
   */
  readonly later: readonly StageOfModel[];
}
