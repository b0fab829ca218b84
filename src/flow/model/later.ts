import type { Model } from './model.js';

/**
 * How the model is up to a time, minutes: it differs in what may change while a run goes on, and in no shape.
 */
export interface StageOfModel {
  readonly until: number;
  readonly model: Model;
}

/** Part of a run in which nothing of the model changes. */
export interface Stretch {
  readonly model: Model;
  readonly from: number;
  readonly to: number;
}

/** The stretches of a time, in order; a single one where nothing changes in it. */
export function stretches(model: Model, from: number, to: number): Stretch[] {
  const found: Stretch[] = [];
  let since = from;
  for (const { until, model: stage } of model.later) {
    if (until <= since) continue;
    if (until >= to) return [...found, { model: stage, from: since, to }];
    found.push({ model: stage, from: since, to: until });
    since = until;
  }
  return [...found, { model, from: since, to }];
}

/**
 * What there is of something times how long it is there, up to a time: what changes is taken stretch by
 * stretch.
 * @param length of the time that ends at `to`, minutes
 * @param count how much of it there is in a stage
 */
export function countTime(model: Model, to: number, length: number, count: (stage: Model) => number): number {
  if (model.later.length === 0) return length * count(model);
  return stretches(model, to - length, to).reduce(
    (sum, { model: stage, from, to: until }) => sum + (until - from) * count(stage),
    0,
  );
}
