import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';

/** The scenario with every phase that asks for its highest rate at `perDay` instead, units a working day. */
export function withHighestRate(scenario: Scenario, perDay: number): Scenario {
  const { programme } = scenario,
    { release } = programme,
    { phases, highest } = askedRate(scenario);
  if (release.kind !== 'rate') return scenario;
  return {
    ...scenario,
    programme: {
      ...programme,
      release: {
        kind: 'rate',
        phases: release.phases.map((phase, i) =>
          phases[i]!.perDay === highest ? { from: phase.from, perDay } : phase,
        ),
      },
    },
  };
}
