import { count, number, withInterval } from '../format.js';
import type { ReliefsResults } from './results.js';

/** The answer in two or three sentences: what gains most, and which number to measure next. */
export function reliefsSentence({
  base,
  reliefs,
  assumptions,
  zone,
  rate,
}: Omit<ReliefsResults, 'answer'>): string {
  const sure = reliefs.filter(({ gain, out }) => out === null && gain.low !== null && gain.low > 0),
    [best] = sure;
  const from = `${withInterval(base.throughput)} units a working day`;
  const first =
    best === undefined
      ? `Of ${count(reliefs.length, 'relief')} none surely ships more than ${from}.`
      : `The best single relief is ${best.text}: ${withInterval(best.gain)} units a working day more ` +
        `than ${from}; ${count(sure.length, 'relief')} of ${reliefs.length} surely ` +
        `ship${sure.length === 1 ? 's' : ''} more.`;
  const held =
    base.verdict !== 'holds'
      ? []
      : [
          `The scenario holds the ${number(rate.askedPerDay ?? 0)} a day it asks for, so little can be ` +
            'gained; --rate asks for more.',
        ];
  const [next] = assumptions;
  const measure =
    next === undefined
      ? []
      : next.largest <= zone
        ? [`No guess or estimate moves it by more than ${number(zone)} within its range.`]
        : [
            `Measure next: ${next.path} (${next.basis}, ${next.value}), which moves it by up to ` +
              `${number(next.largest)} within its range.`,
          ];
  return [first, ...held, ...measure].join(' ');
}
