import { binEdge } from '../flow/bins.js';
import type { Results } from './results.js';
import type { Sample } from './sample.js';

const DAY = 1440;
/** About so many classes; at least two bins of the tally go into one. */
const CLASSES = 40;

export function leadTime(sample: Sample): Results['leadTime'] {
  return {
    unit: 'days',
    mean: sample.amount(({ leadMean }) => leadMean / DAY),
    p50: sample.amount(({ leadP50 }) => leadP50 / DAY),
    p90: sample.amount(({ leadP90 }) => leadP90 / DAY),
    ...histogram(sample),
  };
}

/** Lead time over all units shipped in all replications, minutes; NaN if there is none. */
export function pooledLeadTime({ observations }: Sample): number {
  const shipping = observations.filter(({ shipped }) => shipped > 0);
  return shipping.reduce((sum, { leadMean, shipped }) => sum + leadMean * shipped, 0) / shipping.reduce((sum, { shipped }) => sum + shipped, 0);
}

/**
 * Units of all replications in classes of one width, a round number of days. Within a bin of the tally (0.27 % wide)
 * units count as spread evenly, so a class may be off by a part of the bins at its edges; the total is exact.
 */
function histogram({ observations }: Sample): { edges: number[]; counts: number[] } {
  const shipping = observations.filter(({ shipped }) => shipped > 0);
  if (shipping.length === 0) return { edges: [], counts: [] };
  const bins = new Map<number, number>();
  for (const { leadFirstBin, leadBins } of shipping) leadBins.forEach((units, i) => { if (units > 0) bins.set(leadFirstBin + i, (bins.get(leadFirstBin + i) ?? 0) + units); });
  const least = Math.min(...shipping.map(({ leadLeast }) => leadLeast)), greatest = Math.max(...shipping.map(({ leadGreatest }) => leadGreatest));
  const last = Math.max(...bins.keys());
  const width = roundWidth(Math.max((greatest - least) / CLASSES, 2 * (binEdge(last + 1) - binEdge(last))) / DAY);
  const first = Math.floor(least / DAY / width), end = Math.max(first + 1, Math.ceil(greatest / DAY / width));
  const edges = Array.from({ length: end - first + 1 }, (_, i) => tidy((first + i) * width));

  const below = (days: number): number => {
    let units = 0;
    for (const [bin, count] of bins) {
      // No unit lies beyond the least and the greatest seen.
      const from = Math.max(binEdge(bin), least), to = Math.min(binEdge(bin + 1), greatest), minutes = days * DAY;
      units += minutes >= to ? count : minutes <= from ? 0 : (count * (minutes - from)) / (to - from);
    }
    return Math.round(units);
  };
  return { edges, counts: edges.slice(1).map((edge, i) => (i === end - first - 1 ? below(Infinity) : below(edge)) - (i === 0 ? 0 : below(edges[i]))) };
}

/** The least of 1, 2, 2.5, 5 times a power of ten that is no less. */
function roundWidth(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width));
  const factor = [1, 2, 2.5, 5].find((each) => each * power >= width * (1 - 1e-9)) ?? 10;
  return tidy(factor * power);
}

/** Without the last digits of a float, so that 3 * 0.1 is 0.3. */
const tidy = (value: number): number => Number(value.toPrecision(12));
