export interface Line {
  /** Work of each station, as a time of the scenario language. */
  readonly work: readonly string[];
  /** Spaces between the stations, one fewer than stations. */
  readonly between: readonly (number | 'unlimited')[];
  /** Hours observed in each replication, and the time between units; without it a unit is always ready. */
  readonly hours: number;
  readonly arrivals?: string;
  /** Places of every station, 1 unless given. */
  readonly places?: number;
}

export const exponential = (hours: number): string => `{ exponential: { mean: ${hours} h } }`;
/** Buffers of a line without room between its stations. */
export const noRoom = (stations: number, spaces = 0): number[] =>
  new Array<number>(stations - 1).fill(spaces);

/**
 * Scenario of a line in one site, always open. With arrivals the first station has unlimited room ahead,
 * otherwise none.
 */
export function lineYaml({ work, between, hours, arrivals, places = 1 }: Line): string {
  const ahead = [arrivals === undefined ? 0 : 'unlimited', ...between];
  return `
scenario: line
programme: { arrivals: ${arrivals ?? 'saturated'}, length: ${hours} h, warm up: 1000 h }
sites:
  hall:
    stations:
${work.map((_, i) => `      station ${i + 1}: { places: ${places}, buffer: ${ahead[i]} }`).join('\n')}
route:
${work.map((time, i) => `  - { step: step ${i + 1}, at: station ${i + 1}, work: ${time} }`).join('\n')}
`;
}
