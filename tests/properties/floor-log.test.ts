import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import { floorLog } from '../../src/flow/floor-log.js';
import type { Happening } from '../../src/flow/model/happening.js';
import { prepare } from '../../src/flow/plan.js';
import { observe } from '../../src/measure/observe.js';
import { modelOf } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;
const replication = fc.integer({ min: 1, max: 1_000_000 });
const keyOf = ({ route, number }: Happening) => `${route}/${number}`;

describe('the floor log of any small scenario', () => {
  it(
    'tells of each unit, step and find once and in order, and leaves the run as it is',
    () => {
      const seen = { sentBack: 0, scrapped: 0, joined: 0, loaded: 0, carried: 0, sides: 0 };
      fc.assert(
        fc.property(randomScenario, replication, (drawn, r) => {
          const model = modelOf(toYaml(drawn)),
            plan = prepare(model),
            { happenings, run } = floorLog(plan, 'kept', r),
            observed = observe(run, r);
          expect(observed).toEqual(observe(simulate(prepare(model), 'kept', r), r));

          expect(happenings.findIndex(({ at }, i) => i > 0 && at < happenings[i - 1].at)).toBe(-1);
          expectOrder(happenings, model.steps.names);

          const of = (kind: Happening['kind'], main = true) =>
            happenings.filter((each) => each.kind === kind && (!main || each.route === 0));
          expect(of('enter').length).toBe(observed.entered);
          expect(of('ship').length).toBe(observed.shipped);
          expect(of('scrap').length).toBe(observed.scrapped);
          for (const { number, at: shipped } of of('ship'))
            expect(shipped).toBe(observed.shippedAt[number - 1]);

          // Finds of an item for the first time, by row; units sent back, by inspection.
          const found = new Float64Array(model.steps.findSlot.length);
          for (const each of of('find', false)) if (!each.found!.again) found[each.found!.find]++;
          expect([...found]).toEqual([...run.tally.quality.found]);
          const back = new Float64Array(run.shop.inspections.length),
            sent = new Set<string>();
          for (const each of of('find', false))
            if (each.found!.to >= 0) {
              const visit = `${keyOf(each)}/${each.step}/${each.at}`;
              if (!sent.has(visit)) back[run.shop.steps[each.step].inspection]++;
              sent.add(visit);
            }
          expect([...back]).toEqual([...run.tally.inspections.sentBack]);

          // Visits of a step are begun when its place is taken; all but those still there are ended.
          const { steps } = run.shop;
          const ends = new Float64Array(model.steps.count),
            starts = new Float64Array(model.steps.count);
          for (const { kind, step } of happenings) {
            if (kind === 'end') ends[step]++;
            if (kind === 'start') starts[step]++;
          }
          for (const step of steps) {
            if (step.lane !== null || step.sideSteps.length > 0) continue;
            const inside = openIn(happenings, step.id);
            expect(starts[step.id]).toBe(ends[step.id] + inside);
            expect(starts[step.id]).toBeLessThanOrEqual(step.visits);
            expect(step.visits - ends[step.id]).toBeLessThanOrEqual(step.station!.places.length);
            if (observed.outcome === 'finished' && step.route.isMain)
              expect(starts[step.id]).toBe(step.visits);
          }
          for (const { id, carried } of run.shop.lanes)
            expect(
              happenings.filter(({ kind, step }) => kind === 'load' && model.steps.lane[step] === id).length,
            ).toBe(carried);
          expectPartsOnce(
            happenings,
            new Set(run.shop.routes.flatMap(({ id, stock }) => (stock === null ? [] : [id]))),
          );

          seen.sentBack += sent.size;
          seen.scrapped += of('scrap').length;
          seen.joined += of('join').length;
          seen.loaded += of('load').length;
          seen.carried += happenings.filter(({ others }) =>
            others.some(({ kind }) => kind === 'carrier'),
          ).length;
          seen.sides += happenings.filter(({ step }) => step >= 0 && steps[step].group !== null).length;
        }),
        { seed: 20270816, numRuns: 60, endOnFailure: true },
      );
      for (const count of Object.values(seen)) expect(count).toBeGreaterThan(50);
    },
    SLOW,
  );
});

/** Starts without an end. */
function openIn(happenings: readonly Happening[], step: number): number {
  const open = new Set<string>();
  for (const each of happenings) {
    if (each.step !== step) continue;
    if (each.kind === 'start') open.add(keyOf(each));
    if (each.kind === 'end') open.delete(keyOf(each));
  }
  return open.size;
}

/** Each object enters first; a start follows its arrival, an end its start; nothing is left behind shipping. */
function expectOrder(happenings: readonly Happening[], names: readonly string[]): void {
  const inside = new Map<string, { at: number; phase: string; truck: boolean }>(),
    sides = new Set<string>();
  for (const each of happenings) {
    const { kind, step } = each,
      key = keyOf(each),
      state = inside.get(key);
    const must = (holds: boolean): void => {
      if (!holds)
        throw new Error(`${kind} of ${key} at ${names[step]} at ${each.at}: ${JSON.stringify(state)}`);
    };
    if (kind === 'enter') {
      inside.set(key, { at: -1, phase: 'entered', truck: false });
      continue;
    }
    if (state === undefined) throw new Error(`${kind} of ${key} at ${each.at}, which is not inside`);
    const { phase, truck } = state;
    if (names[step]?.startsWith('beside ') && kind !== 'arrive') {
      const side = `${key}/${step}`;
      must(sides.has(side) === (kind === 'end'));
      if (kind === 'end') sides.delete(side);
      else sides.add(side);
      if (kind === 'end') state.phase = 'ended';
    } else if (kind === 'arrive') {
      must(phase === 'entered' || phase === 'ended');
      Object.assign(state, { at: step, phase: 'arrived' });
    } else if (kind === 'start') {
      must(phase === 'arrived' && state.at === step);
      state.phase = 'started';
    } else if (kind === 'end') {
      must(phase === 'started' && state.at === step);
      state.phase = 'ended';
    } else if (kind === 'load') {
      must(phase === 'arrived' && !truck);
      state.truck = true;
    } else if (kind === 'unload') {
      must(truck);
      Object.assign(state, { truck: false, phase: 'ended' });
    } else if (kind === 'find' || kind === 'join') must(state.at === step);
    else {
      must(phase === 'ended' && !truck);
      inside.delete(key);
    }
  }
}

/** No sub-assembly of a stock joins twice, and none before it was built. */
function expectPartsOnce(happenings: readonly Happening[], stocked: ReadonlySet<number>): void {
  const joined = new Set<string>(),
    built = new Set<string>();
  for (const { kind, others, ...each } of happenings) {
    if (kind === 'end') built.add(`${each.route}/${each.number}`);
    if (kind !== 'join') continue;
    for (const other of others) {
      if (other.kind !== 'part') continue;
      const key = `${other.route}/${other.number}`;
      // Own parts come off and go on again and again.
      const isRight =
        Number.isInteger(other.number) &&
        (!stocked.has(other.route) || (!joined.has(key) && (other.number <= 0 || built.has(key))));
      if (!isRight) throw new Error(`${key} joins again, or before it was built`);
      joined.add(key);
    }
  }
}
