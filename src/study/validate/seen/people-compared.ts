import type { Model } from '../../../flow/model/model.js';
import type { Measure } from './measures.js';
import { mostAtOnce, shareAbove } from './people.js';
import type { LogWatch } from './watch.js';

/** Most people at once by crew and shift, and how long how many: what it takes to compare logs. */
export interface PeopleSeen {
  readonly crew: number;
  readonly shift: number;
  readonly most: number;
  readonly minutes: readonly number[];
}

export const peopleOf = ({ people }: LogWatch): PeopleSeen[] =>
  people.crews.flatMap(({ minutes }, crew) =>
    minutes.map((booked, shift) => {
      const filled = Array.from(booked, (each: number | undefined) => each ?? 0);
      return { crew, shift, most: mostAtOnce(filled), minutes: filled };
    }),
  );

/**
 * The same as measures: how long more people were at work than ever at once in the real log, or, where it has
 * more of them than any simulated one and than the crew has, than in these.
 */
export function peopleMeasures(
  model: Model,
  real: readonly PeopleSeen[],
  simulated: readonly (readonly PeopleSeen[])[],
): { readonly real: Measure[]; readonly simulated: Measure[][]; readonly most: number[] } {
  const most = real.map((_, i) => simulated.reduce((top, each) => Math.max(top, each[i]?.most ?? 0), 0)),
    levels = real.map((each, i) => {
      const simulatedMost = most[i] ?? 0;
      // As many as the crew has may meet by luck, though they did in no simulated log.
      return each.most <= headcount(model, each.crew) ? each.most : Math.min(each.most, simulatedMost);
    });
  const measured = (all: readonly PeopleSeen[]): Measure[] =>
    all.map(({ crew, shift, minutes }, i) => ({
      topic: 'people',
      of: model.resources.names[crew] ?? '',
      what: (model.resources.shifts[crew]?.position.length ?? 0) > 0 ? `shift ${shift + 1}` : '',
      value: shareAbove(minutes, levels[i] ?? 0),
      n: 0,
    }));
  return { real: measured(real), simulated: simulated.map(measured), most };
}

/** People of a crew at most, in any shift and at any date. */
const headcount = ({ resources, later }: Model, crew: number): number =>
  [
    resources,
    ...later.flatMap(({ parts }) => (parts.resources === undefined ? [] : [parts.resources])),
  ].reduce(
    (most, { amount, shifts }) =>
      Math.max(most, amount[crew] ?? 0, ...Array.from(shifts[crew]?.people ?? [], Number)),
    0,
  );
