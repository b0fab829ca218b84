import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { UNLIMITED } from '../../../src/flow/model/model.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { bufferOf, type Room, withRoom } from '../../../src/scenario/whole/room.js';
import { spotsOf, withLayout } from '../../../src/study/buffers/spots.js';

const read = (file: string): Scenario =>
  readScenario(readFileSync(file, 'utf8'), file, (relative) =>
    readFileSync(resolve('scenarios', relative), 'utf8'),
  ).scenario!;

describe('a model with other waiting places, made of the one as it is', () => {
  it.each(['scenarios/rescue-tender.yaml', 'scenarios/starter.yaml'])(
    'is that of %s with these places compiled anew',
    (file) => {
      const scenario = read(file),
        spots = spotsOf(scenario),
        model = compile(scenario),
        before = structuredClone(model);
      for (const layout of [
        spots.map(({ present }) => present),
        spots.map(({ present }, s) => present + 1 + (s % 3)),
        spots.map(({ kind, least }) => (kind === 'arrival bank' ? 1 : least)),
      ]) {
        expect(withRoom(model, spots, layout)).toEqual(compile(withLayout(scenario, spots, layout)));
      }
      expect(model).toEqual(before);
    },
  );

  it('has to be compiled where an arrival bank comes or goes', () => {
    const scenario = read('scenarios/rescue-tender.yaml'),
      lane = Object.keys(scenario.lanes)[0],
      bank: Room = { kind: 'arrival bank', of: lane },
      model = compile(scenario);
    expect(withRoom(model, [bank], [0])).toBeNull();
    const none = compile(withLayout(scenario, [{ ...bank, name: lane, present: 1, least: 0 }], [0]));
    expect(bufferOf(none, bank)).toBe(-1);
    expect(withRoom(none, [bank], [2])).toBeNull();
    expect(withRoom(none, [bank], [0])).toEqual(none);
    // One without a limit is no station.
    const spot = { ...bank, name: lane, present: 1, least: 0 },
      endless = compile(withLayout(scenario, [spot], [UNLIMITED]));
    expect(endless.lanes.endless[0]).toBe(1);
    expect(bufferOf(endless, bank)).toBe(-1);
    expect(withRoom(endless, [bank], [UNLIMITED])).toEqual(endless);
    for (const [from, places] of [
      [endless, 0],
      [endless, 2],
      [none, UNLIMITED],
      [model, UNLIMITED],
    ] as const)
      expect(withRoom(from, [bank], [places])).toBeNull();
  });
});
