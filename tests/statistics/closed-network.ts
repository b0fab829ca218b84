/**
 * Stations with one exponential server each, and one without waiting (the way back of a carrier), with a
 * fixed number of carriers.
 */
export interface ClosedNetwork {
  readonly hours: readonly number[];
  readonly delay?: number;
  readonly carriers: number;
}

/**
 * Units an hour by exact mean-value analysis (Reiser & Lavenberg 1980): a carrier that comes finds what one
 * carrier fewer would leave.
 */
export function meanValueAnalysis({ hours, delay = 0, carriers }: ClosedNetwork): number {
  let queues = hours.map(() => 0),
    rate = 0;
  for (let n = 1; n <= carriers; n++) {
    const stays = hours.map((time, i) => time * (1 + queues[i]));
    rate = n / (delay + stays.reduce((a, b) => a + b, 0));
    queues = stays.map((stay) => rate * stay);
  }
  return rate;
}

/**
 * The same from the product form (Gordon & Newell 1967), by all states one by one: the weight of (n1, n2, ..,
 * m on the way back) is the product of hours_i ^ n_i and delay ^ m / m!. G(N - 1) / G(N) carriers an hour
 * pass.
 */
export function productForm({ hours, delay = 0, carriers }: ClosedNetwork): number {
  const weight = (left: number, station: number): number => {
    if (station === hours.length) {
      let value = 1;
      for (let m = 1; m <= left; m++) value *= delay / m;
      return value;
    }
    let sum = 0;
    for (let n = 0; n <= left; n++) sum += hours[station] ** n * weight(left - n, station + 1);
    return sum;
  };
  return weight(carriers - 1, 0) / weight(carriers, 0);
}

/**
 * A line whose units each need a carrier from the first station to the last; every unit that has one has
 * room.
 */
export function carrierYaml(
  { hours, delay = 0, carriers }: ClosedNetwork,
  work: (hours: number) => string,
  length: number,
): string {
  const last = hours.length - 1;
  return `
scenario: closed network
programme: { arrivals: saturated, length: ${length} h, warm up: 500 h }
sites:
  hall:
    stations:
${hours.map((_, i) => `      station ${i}: { buffer: ${i === 0 ? 0 : 'unlimited'} }`).join('\n')}
carriers:
  carts: { count: ${carriers}, from: step 0, to: step ${last}${delay > 0 ? `, return: ${work(delay)}` : ''} }
route:
${hours.map((time, i) => `  - { step: step ${i}, at: station ${i}, work: ${work(time)} }`).join('\n')}
`;
}
