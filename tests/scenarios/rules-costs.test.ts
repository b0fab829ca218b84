import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { play, shippedAt } from '../flow/run-yaml.js';
import { summarise } from '../study/summarise.js';

it('17-costs.yaml costs to the cent what its first lines say', () => {
  const text = readFileSync(
    fileURLToPath(new URL('../../scenarios/rules/17-costs.yaml', import.meta.url)),
    'utf8',
  );
  const scenario = readScenario(text, '17-costs.yaml', () => '').scenario!,
    played = play(text),
    h = 60;
  expect(shippedAt(played)).toEqual([7 * h, 11 * h, 11.5 * h, 15 * h]);
  const costs = summarise({
    scenario,
    model: compile(scenario),
    observations: [played.seen],
    file: '17-costs.yaml',
    seed: 'hand',
    level: 0.95,
  }).costs!;
  const money = Object.fromEntries(
    costs.parts.map(({ name, perUnit }) => [name, Math.round(perUnit.mean * 4 * 1e6) / 1e6]),
  );
  expect(money).toEqual({
    people: 1056,
    overtime: 178,
    'units in work': 85,
    floor: 105,
    'send-backs': 500,
    scrap: 0,
  });
  expect(costs.perUnit.mean).toBeCloseTo(481, 9);
  expect(costs.rework.hoursPerUnit.mean * 4).toBeCloseTo(2 * (2 + 0.5), 9);
  expect(costs.rework.costPerUnit.mean).toBeCloseTo(181, 9);
});
