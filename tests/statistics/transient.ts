/**
 * Mean number in an M/M/1 that begins empty, integrated from 0 to a time, in closed arithmetic: the chain of its
 * jumps at the rate lambda + mu (uniformisation: Jensen 1953, Skand. Aktuarietidskr. 36, 87-91; from memory).
 * After k jumps of that rate on average k / (lambda + mu) have passed; over many of them the spread of that
 * time does not matter.
 */
export function unitHours(lambda: number, mu: number, most: number): (hours: number) => number {
  const rate = lambda + mu,
    states = Math.ceil(Math.log(1e-9) / Math.log(lambda / mu)) + 60,
    sums = [0];
  let p = new Float64Array(states + 1);
  p[0] = 1;
  for (let jump = 0; jump < rate * most + 1; jump++) {
    const next = new Float64Array(states + 1);
    let mean = 0;
    for (let i = 0; i <= states; i++) {
      mean += i * p[i];
      next[Math.min(states, i + 1)] += (lambda / rate) * p[i];
      next[Math.max(0, i - 1)] += (mu / rate) * p[i];
    }
    sums.push(sums[jump] + mean / rate);
    p = next;
  }
  return (hours) => {
    const jumps = rate * hours,
      whole = Math.floor(jumps);
    return sums[whole] + (jumps - whole) * (sums[whole + 1] - sums[whole]);
  };
}
