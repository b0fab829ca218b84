import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';

describe('panels that are stripped after a bad bake, twice at most, scrapped at the third', SLOW, () => {
  // Rounds of a panel are geometric cut at three: 1 + q + q^2. A share q^3 is scrapped and made again.
  const q = 0.3,
    panels = 1 / (1 - q ** 3);
  const yaml = readFileSync(new URL('../../scenarios/rules/04-strip-loop.yaml', import.meta.url), 'utf8')
    .replace('blister: 20 %', `blister: ${100 * q} %`)
    .replace('quantity: 300', 'quantity: 8000');
  // Steps of the unit's route, then of the feeder: take off, hang, strip, coat, bake, look over.
  const seen = observations(yaml),
    strips = seen.map(({ stepVisits }) => stepVisits[2]),
    coats = seen.map(({ stepVisits }) => stepVisits[3]);

  it('are coated 1 / (1 - q) times a unit, whatever the limit', () => {
    expectAgreement(
      coats.map((count) => count / 8000),
      1 / (1 - q),
      0.005,
    );
  });

  it('are coated 1 + q + q^2 times a panel, and stripped q + q^2 times', () => {
    expectAgreement(
      coats.map((count, i) => count / (count - strips[i])),
      1 + q + q * q,
      0.005,
    );
    expectAgreement(
      strips.map((count) => count / 8000),
      panels * (q + q * q),
      0.01,
    );
  });

  it('are begun 1 / (1 - q^3) times a unit, of which q^3 are scrapped', () => {
    expectAgreement(
      coats.map((count, i) => (count - strips[i]) / 8000),
      panels,
      0.005,
    );
    for (const [i, { inspections, shipped }] of seen.entries()) {
      expect(shipped).toBe(8000);
      expect(8000 + inspections.scrapped[0]).toBe(coats[i] - strips[i]);
    }
  });
});
