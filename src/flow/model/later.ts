import type { Model } from './model.js';

/**
 * How the model is up to a time, minutes: the parts that differ then. They differ in what may change while a
 * run goes on, and in no shape; all others are those of the model.
 */
export interface StageOfModel {
  readonly until: number;
  readonly parts: Partial<Model>;
}

/** The model of a stage, by its number; that of the last changes where there is no such stage. */
export const modelAt = (model: Model, stage: number): Model =>
  stage < model.later.length ? { ...model, ...model.later[stage].parts } : model;

/** Part of a run in which nothing of the model changes. */
export interface Stretch {
  /** Number of the stage; as many as there are stages where all changes are there. */
  readonly stage: number;
  readonly model: Model;
  readonly from: number;
  readonly to: number;
}

/** The stretches of a time, in order; a single one where nothing changes in it. */
export function stretches(model: Model, from: number, to: number): Stretch[] {
  const found: Stretch[] = [];
  let since = from;
  for (let stage = 0; stage < model.later.length; stage++) {
    const { until } = model.later[stage];
    if (until <= since) continue;
    found.push({ stage, model: modelAt(model, stage), from: since, to: Math.min(until, to) });
    since = until;
    if (until >= to) return found;
  }
  return [...found, { stage: model.later.length, model, from: since, to }];
}

/**
 * What there is of something times how long it is there, up to a time: what changes is taken stretch by
 * stretch.
 * @param length of the time that ends at `to`, minutes
 * @param count how much of it there is in a stage
 */
export function countTime(
  model: Model,
  to: number,
  length: number,
  count: (present: Model, stage: number) => number,
): number {
  if (model.later.length === 0) return length * count(model, 0);
  return stretches(model, to - length, to).reduce(
    (sum, { stage, model: present, from, to: until }) => sum + (until - from) * count(present, stage),
    0,
  );
}
