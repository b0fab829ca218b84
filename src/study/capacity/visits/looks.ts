import type { Inspection } from './inspection.js';

/** Units that an inspection looks at, those with nothing found, those sent back, by the step they go to. */
export interface Look {
  readonly units: number;
  readonly clear: number;
  readonly sentTo: ReadonlyMap<number, number>;
}

export const lookOf = ({ units, clear, backs }: Inspection): Look => ({
  units,
  clear,
  sentTo: new Map(backs.map((back) => [back.target, back.units])),
});

/** One more look, by so many units. */
export function added(before: Look | undefined, { units, clear, sentTo }: Look, times: number): Look {
  return {
    units: (before?.units ?? 0) + times * units,
    clear: (before?.clear ?? 0) + times * clear,
    sentTo: new Map(
      [...sentTo].map(([target, sent]) => [target, (before?.sentTo.get(target) ?? 0) + times * sent]),
    ),
  };
}
