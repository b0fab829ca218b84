import { expect, it } from 'vitest';
import type { ToCome } from '../../../src/study/asked.js';
import { BuffersForecast } from '../../../src/study/buffers/forecast.js';
import { Forecast } from '../../../src/study/reliefs/forecast.js';

it('the replications of reliefs lie between the first look and all for all, and come together', () => {
  const told: ToCome[] = [];
  // 40 of the base, groups of 100 and 20 changes, 10 each to the first look; then the base, five reliefs and a
  // value once more.
  const forecast = new Forecast([1000, 200], 40, [100, 20], 5, (toCome) => told.push(toCome));
  // 30 are in after it, then 5 after the second, and those are run to the end.
  forecast.seen(0, { run: 1000, alive: 30, each: 10 });
  forecast.seen(0, { run: 1300, alive: 5, each: 20 });
  forecast.seen(0, { run: 1400, alive: 5, each: 40 });
  forecast.seen(1, { run: 800, alive: 20, each: 40 });
  // No value moves it.
  forecast.finalists(6);
  expect(told).toEqual([
    { least: 40 + 1000 + 200, most: 40 + 4000 + 800 + 280 },
    { least: 40 + 1000 + 200, most: 40 + 1000 + 30 * 30 + 800 + 280 },
    { least: 40 + 1300 + 200, most: 40 + 1300 + 5 * 20 + 800 + 280 },
    { least: 40 + 1400 + 200, most: 40 + 1400 + 800 + 280 },
    { least: 40 + 1400 + 800, most: 40 + 1400 + 800 + 280 },
    { least: 40 + 1400 + 800 + 240, most: 40 + 1400 + 800 + 240 },
  ]);
});

it('the replications of a search for places are at least its steps, by those made, and two for its moves', () => {
  const told: ToCome[] = [];
  const forecast = new BuffersForecast(20, (toCome) => told.push(toCome));
  forecast.done = 20;
  forecast.begin();
  forecast.done = 120;
  forecast.step(9);
  forecast.done = 180;
  forecast.step(8);
  expect(told).toEqual([
    { least: 20, most: null },
    // 100 a step.
    { least: 120 + 11 * 100 + 20, most: null },
    // 80 a step.
    { least: 180 + 10 * 80 + 20, most: null },
  ]);
});
