/** States of a place; the order is that of `measure` and of the reports. */
export const WORKING = 0,
  CHANGEOVER = 1,
  UNATTENDED = 2,
  SHORT_CREW = 3,
  SHORT_PARTS = 4,
  SHORT_CARRIER = 5,
  SHORT_EQUIPMENT = 6,
  BLOCKED = 7,
  STARVED = 8,
  DOWN = 9,
  OFF_SHIFT = 10;
export const STATE_COUNT = 11;

/** Of several states the one of lowest rank is shown: of unmet claims parts, carrier, equipment, crew. */
export const rank = (state: number): number =>
  state < 0
    ? STATE_COUNT
    : state === SHORT_CREW
      ? SHORT_EQUIPMENT
      : state > SHORT_CREW && state <= SHORT_EQUIPMENT
        ? state - 1
        : state;
/** Of two states of shortage, -1: none. */
export const shownOf = (a: number, b: number): number => (rank(a) <= rank(b) ? a : b);

/** Whether a place is at its own task. */
export const isActive = (state: number): boolean => state <= UNATTENDED || state === DOWN;

/**
 * Events; a smaller number goes first at one time: ends of tasks, then trucks, then releases, then timers,
 * then what comes to the shop from outside.
 */
export const TASK = 0,
  TRUCK = 1,
  RELEASE = 2,
  LANE_TIMER = 3,
  LOT_TIMER = 4,
  CARRIER_BACK = 5,
  SUPPLY_LOT = 6,
  SHIFT_CHANGE = 7,
  DISRUPTION = 8,
  PULSE = 9;

/** Phases of the task at a place. */
export const WAIT_NEEDS = 0,
  IN_CHANGEOVER = 1,
  WAIT_SHIFT = 2,
  IN_WORK = 3,
  IN_SETTLE = 4,
  IN_PROCESS = 5,
  WAIT_REPAIR = 6,
  IN_REPAIR = 7,
  IN_MENDING = 8,
  /** A changeover that passes by itself, before anything is claimed. */
  IN_CHANGE_ALONE = 9,
  /** The crew had left and is asked for again; the process is over, and somebody has to come to end it. */
  WAIT_CREW = 12,
  WAIT_END = 13,
  /** As WAIT_NEEDS, but its parts are set aside for it already. */
  WAIT_REST = 14,
  /** Of a place at whose sides steps go on. */
  SIDE_BY_SIDE = 16;

/** Phases of a truck. */
export const AT_BASE = 0,
  LOADING = 1,
  DRIVING = 2,
  WAIT_DOCK = 3,
  UNLOADING = 4,
  EMPTYING = 5,
  RETURNING = 6;
