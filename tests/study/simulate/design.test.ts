import { setImmediate } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { simulateDesign } from '../../../src/study/simulate/design.js';
import { observation, twoPlants } from '../made-observation.js';

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

it('keeps of its replications only the first, however many come', async () => {
  const { take, found } = simulateDesign({
    scenario: twoPlants,
    file: 'two-plants.yaml',
    replications: 30,
    seed: '1',
    level: 0.95,
  }).gather();
  const seen = Array.from({ length: 30 }, (_, i) => {
    const made = observation(twoPlants, i + 1);
    take(made, 0);
    return new WeakRef(made);
  });
  // What was looked at through a WeakRef lives to the end of the turn.
  await setImmediate();
  collectGarbage();
  expect(seen.flatMap((made) => made.deref()?.replication ?? [])).toEqual([1]);
  expect(found().results.runs).toHaveLength(30);
});
