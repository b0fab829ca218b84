// Apart from reading: `check` needs no digest, and Node's crypto takes longer to load than its arithmetic.
import { createHash } from 'node:crypto';
import type { Scenario } from './types/scenario.js';

/**
 * SHA-256, in hex, of a scenario's canonical JSON: as read, so defaults are written out, units are minutes,
 * keys stand in a fixed order and remarks in the file (not notes) are gone, as are levers, what could be
 * changed at what price, and what is said of where values come from: none of these decides what is built,
 * so a journal is taken up again though a quote has come in. Names keep the planner's order, since ties and
 * draws may go by it: files with the same digest give the same results.
 */
export function digest(scenario: Scenario): string {
  return createHash('sha256')
    .update(JSON.stringify(bare(scenario)))
    .digest('hex');
}

/** Without what decides nothing that is built; the same of how it is before changes are there. */
const bare = (scenario: Scenario): object => ({
  ...scenario,
  costs: scenario.costs && { ...scenario.costs, changes: undefined },
  assumptions: undefined,
  levers: undefined,
  before: scenario.before?.map((stage) => ({ until: stage.until, scenario: bare(stage.scenario) })),
});
