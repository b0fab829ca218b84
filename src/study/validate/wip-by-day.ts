import { placeNames } from './seen/frame.js';
import type { SideBySide } from './types.js';

/** Mean units at a site or on a lane, by day as `byDay`; of simulated builds the least, middle and most. */
export interface WipByDay {
  readonly place: string;
  readonly kind: 'site' | 'lane';
  readonly real: readonly number[];
  readonly low: readonly number[];
  readonly middle: readonly number[];
  readonly high: readonly number[];
}

/** Every site, then every lane. */
export function wipByDay({ real, simulated }: Pick<SideBySide, 'real' | 'simulated'>): WipByDay[] {
  const { model } = real.frame,
    days = Array.from({ length: real.watch.line.standing.days }, (_, day) => day);
  return placeNames(model).map((name, place) => {
    const sorted = days.map((day) =>
      simulated.map(({ watch }) => watch.line.standing.mean(place, day)).sort((a, b) => a - b),
    );
    return {
      place: name,
      kind: place < model.siteNames.length ? 'site' : 'lane',
      real: days.map((day) => real.watch.line.standing.mean(place, day)),
      low: sorted.map((all) => all[0] ?? 0),
      middle: sorted.map((all) => all[Math.floor(all.length / 2)] ?? 0),
      high: sorted.map((all) => all.at(-1) ?? 0),
    };
  });
}
