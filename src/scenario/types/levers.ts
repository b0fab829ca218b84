/** What a reader of the report may try: a value of the scenario, from one number to another. */
export interface Lever {
  /** As the planner calls it. */
  readonly name: string;
  /** The path of the value, as in a file of what-ifs. */
  readonly change: string;
  /** Numbers, with the unit that the value has in the scenario. */
  readonly from: number | string;
  readonly to: number | string;
  /** From one number to the next; 1 in the unit of the value where left out. */
  readonly step: number | string | undefined;
  /** Money, once, for each step above what the scenario has; undefined: not known. */
  readonly price: number | undefined;
}
