/**
 * Why one thing may wait for another: a unit goes `on` to its next step, or is sent `back`; `kept`: the same
 * with a carrier or a team; a step `claims` a carrier or people, `again` after it had given it back, `more`
 * people of the crew that stays with the unit; it wants `parts` of a feeder, or its `own`; these are `made`
 * at a step.
 */
export type Why = 'on' | 'back' | 'kept' | 'claims' | 'again' | 'more' | 'parts' | 'own' | 'made';

/** Whoever has what `from` stands for may wait for what `to` stands for. */
export interface Wait {
  readonly from: number;
  readonly to: number;
  readonly why: Why;
  /** Steps, and row of the find that sends back; -1 where there is none. */
  readonly step: number;
  readonly next: number;
  readonly find: number;
  /** Carrier or team, or the route of a feeder; -1. */
  readonly of: number;
}
