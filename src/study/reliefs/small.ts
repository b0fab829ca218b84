import { compile } from '../../scenario/compile.js';
import { reliefsOf as smallOf } from '../../scenario/reliefs/kinds.js';
import type { Relief } from '../../scenario/reliefs/relief.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { capacity } from '../capacity/capacity.js';

/** All reliefs of a scenario, in a fixed order; a feeder stands where the capacity table has it. */
export function reliefsOf(scenario: Scenario): Relief[] {
  return smallOf(
    scenario,
    (feeder) =>
      capacity(compile(scenario), scenario).rows.find(
        ({ kind, name }) => kind === 'feeder' && name === feeder,
      )?.site,
  );
}
