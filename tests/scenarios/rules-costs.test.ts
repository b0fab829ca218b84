import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { play, shippedAt } from '../flow/run-yaml.js';
import { summarise } from '../study/summarise.js';

function costsOf(file: string) {
  const text = readFileSync(fileURLToPath(new URL(`../../scenarios/rules/${file}`, import.meta.url)), 'utf8');
  const scenario = readScenario(text, file, () => '').scenario!,
    played = play(text),
    model = compile(scenario);
  const { costs } = summarise({
    scenario,
    model,
    observations: [played.seen],
    file,
    seed: 'hand',
    level: 0.95,
  });
  return { played, costs: costs! };
}

it('17-costs.yaml costs to the cent what its first lines say', () => {
  const { played, costs } = costsOf('17-costs.yaml'),
    h = 60;
  expect(shippedAt(played)).toEqual([7 * h, 11 * h, 11.5 * h, 15 * h]);
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

it('08-back-to-paint.yaml pays a trip home and another one out for each cabin that is sent back', () => {
  const { played, costs } = costsOf('08-back-to-paint.yaml'),
    [, back] = played.seen.lanes.carried;
  expect(costs.perUnit.mean).toBeCloseTo(90 + ((90 + 150) * back) / 200, 9);
  expect(costs.rework.costPerUnit.mean).toBeCloseTo(((90 + 150) * back) / 200, 9);
});
