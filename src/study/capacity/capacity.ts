import type { Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/distribution.js';
import { compile } from '../../scenario/compile.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type PlannersUnit } from '../planners-unit.js';
import { plannersUnit } from '../unit-of.js';
import { type DailyMinutes, dailyMinutes } from './days.js';
import { type Demand, demand } from './demand.js';
import { feederLimits } from './feeders.js';
import { type Limit, type LimitKind, laneLimits, usesOf } from './limits.js';
import { supplyLimits } from './supplies.js';

/**
 * What one constraint could carry by itself. All rates count units released a working day of the release
 * calendar.
 */
export interface CapacityRow {
  readonly kind: LimitKind;
  readonly name: string;
  readonly site: string;
  /**
   * Visits (station, lane), steps that want it (crew, equipment), times claimed (carrier, team), sub-
   * assemblies begun (feeder), parts used (supply), for each unit released.
   */
  readonly visitsPerUnit: number;
  /**
   * Minutes of one place, person, piece, carrier or truck for each unit released. For a feeder, those of its
   * slowest station or crew; 0 for a supply.
   */
  readonly minutesPerUnit: number;
  /** Minutes of all its places, people, pieces, carriers or trucks a working day; 0 for a supply. */
  readonly availableMinutesPerDay: number;
  /** Units a working day; null: no limit. */
  readonly capacityPerDay: number | null;
  /** Asked rate over capacity; null where no rate is asked. */
  readonly load: number | null;
  /**
   * Of carriers, and of crews with teams, load counts only what they are surely kept for: it is at least
   * that. This is the load with the waits of a unit alone: nights, timetables, loads to be filled (see
   * `StayDemand`), about. null for the others, and where no rate is asked.
   */
  readonly loadAlone: number | null;
}

export interface CapacityTable {
  /**
   * Stations in the order of the scenario (arrival banks left out), crews, equipment, carriers, lanes,
   * feeders, supplies.
   */
  readonly rows: readonly CapacityRow[];
  /** How the planner gives the rate; all rates of this table are per working day. */
  readonly rateUnit: PlannersUnit;
  /** Highest rate asked, units a working day; of drawn arrivals the mean; null for a saturated line. */
  readonly askedPerDay: number | null;
  /** The least capacity: no plan can hold more. null: nothing limits. */
  readonly highestRatePerDay: number | null;
  readonly bottleneck: CapacityRow | null;
  /**
   * What the reader should know about how it was reckoned; one line a note; null: nothing beyond the rules
   * below.
   */
  readonly note: string | null;
}

/**
 * Capacity by arithmetic, without chance in time and without blocking: mean minutes asked for by a unit
 * against minutes there are. Expected visits include rework, sampling, options, escapes, scrap and feeders
 * (see `expectedVisits`).
 *
 * - Days are working days of the release calendar (see `dailyMinutes`).
 * - Crews have the people of each shift, less those who are missing on average; those who are left over on a
 *   shift count only if somebody asks for so few. Overtime is left out, and the note says so.
 * - Unattended minutes (last settling, process) count in full against the shift minutes of a station on a
 *   calendar, though some may run through the night: there the capacity is on the safe side. At an unattended
 *   station the day has 24 h.
 * - Minutes at a station that fails are divided by its availability (see `availability`), also those of the
 *   crew, which stays. Repairs of shared equipment lengthen the steps that have it in
 *   the same way.
 * - A truck's day is that of its driving hours; loading and unloading are not made to wait for the shifts of
 *   the sites.
 * - A carrier's and a team's minutes are a lower bound (see `StayDemand`), so their capacity is an upper one;
 *   `loadAlone` adds the waits that a unit alone would have.
 * - A feeder's capacity is that of its slowest station or crew, as if that worked for this feeder alone.
 * - A supply's is what comes in over what a unit takes (see `supplyLimits`).
 * - Where changes come on their dates, it is the capacity when all of them are there.
 */
export function capacity(model: Model, scenario: Scenario): CapacityTable {
  if (scenario.before === undefined) return capacityOf(model, scenario);
  const last = { ...scenario, before: undefined };
  return capacityOf(compile(last), last);
}

function capacityOf(model: Model, scenario: Scenario): CapacityTable {
  const asks = demand(model);
  const daily = dailyMinutes(model, scenario);
  const asked = askedPerDay(scenario, daily);
  const uses = usesOf(model, asks, daily, asked);
  const rows = [
    ...uses,
    ...laneLimits(model, asks, daily),
    ...feederLimits(model, asks, uses),
    ...supplyLimits(model, scenario, asks, daily),
  ].map((limit) => row(limit, asked));
  const ofRow = (row: CapacityRow | null): number => row?.capacityPerDay ?? Infinity,
    bottleneck = rows.reduce<CapacityRow | null>(
      (least, each) => (ofRow(each) < ofRow(least) ? each : least),
      null,
    );
  return {
    rows,
    rateUnit: plannersUnit(scenario),
    askedPerDay: asked,
    highestRatePerDay: bottleneck?.capacityPerDay ?? null,
    bottleneck,
    note: noteOn(model, scenario, asks),
  };
}

function noteOn(model: Model, { calendars }: Scenario, { isExact }: Demand): string | null {
  const notes: [boolean, string][] = [
    [
      !isExact,
      'more than 256 combinations of options: each option was averaged by itself, as if steps ' +
        'chose among them independently',
    ],
    [
      Object.values(calendars).some(({ overtime }) => overtime.length > 0),
      'overtime is left out: it comes on top',
    ],
    [model.failures.count > 0, 'the mean time for which failures hold a station up is in min/unit'],
    [model.outages.count > 0, 'dated outages are left out'],
  ];
  const said = notes.filter(([is]) => is).map(([, note]) => note);
  return said.length === 0 ? null : said.join('; ');
}

function row(
  { kind, name, site, visits, minutes, minutesAlone, available, most = Infinity }: Limit,
  asked: number | null,
): CapacityRow {
  const limit = Math.min(most, minutes > 0 ? available / minutes : Infinity);
  return {
    kind,
    name,
    site,
    visitsPerUnit: visits,
    minutesPerUnit: minutes,
    availableMinutesPerDay: available,
    capacityPerDay: limit === Infinity ? null : limit,
    load: asked === null ? null : limit === 0 ? Infinity : asked / limit,
    loadAlone:
      asked === null || minutesAlone === undefined || !(available > 0)
        ? null
        : (asked * minutesAlone) / available,
  };
}

function askedPerDay(scenario: Scenario, daily: DailyMinutes): number | null {
  const { release } = scenario.programme;
  switch (release.kind) {
    case 'rate':
      return askedRate(scenario).highest;
    case 'interval':
      return daily.of(-1) / meanOf(release.interval);
    case 'saturated':
      return null;
  }
}
