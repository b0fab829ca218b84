/**
 * Steps side by side. A group has a step of its own, without work, on which the unit takes its place; the
 * steps done in it follow right behind and are not on the unit's way themselves.
 */
export interface SideBySideColumns {
  /** By step: the group that it is done in; -1. */
  readonly group: Int32Array;
  /**
   * By station: the most steps of one group there, and the most people in one place (UNLIMITED: no limit).
   */
  readonly most: Int32Array;
  readonly people: Int32Array;
}
