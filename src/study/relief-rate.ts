import { askedRate } from '../scenario/release-rate.js';
import type { Scenario } from '../scenario/scenario.js';

/** Why no other rate can be put into a scenario; null: it can. */
export function noOtherRate({ programme: { release } }: Scenario): string | null {
  if (release.kind !== 'rate') return 'one whose units are not released by a rate';
  return release.phases.length === 0 ? 'one in which each unit has a day of release of its own' : null;
}

/** The scenario with every phase that asks for its highest rate at `perDay` instead, units a working day. */
export function withHighestRate(scenario: Scenario, perDay: number): Scenario {
  const { programme } = scenario, { release } = programme, { phases, highest } = askedRate(scenario);
  if (release.kind !== 'rate') return scenario;
  return { ...scenario, programme: { ...programme, release: { kind: 'rate', phases: release.phases.map((phase, i) => (phases[i]!.perDay === highest ? { from: phase.from, perDay } : phase)) } } };
}
