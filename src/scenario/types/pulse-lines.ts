/** Stations whose units all move on together, see `scenario.ts`. */
export interface PulseLine {
  /** In the order of the route. */
  readonly stations: readonly string[];
  readonly taktMin: number;
}
