import type { Scenario, Stage } from './types/scenario.js';

/**
 * The canonical JSON of a scenario: as read, so defaults are written out, units are minutes, keys stand in a
 * fixed order and remarks in the file (not notes) are gone, as are levers, what could be changed at what
 * price, and what is said of where values come from: none of these decides what is built, so a journal is
 * taken up again though a quote has come in. What is made of changes is in it as what it makes of the
 * scenario. Names keep the planner's order, since ties and draws may go by it.
 */
export const canonicalJson = (scenario: Scenario): string =>
  JSON.stringify({ ...bare(scenario), before: scenario.before?.map(bareStage) });

const bare = (scenario: Scenario): object => ({
  ...scenario,
  before: undefined,
  costs: scenario.costs && { ...scenario.costs, changes: undefined },
  assumptions: undefined,
  levers: undefined,
});

/** Of the programme it has that of the whole. */
const bareStage = ({ until, scenario }: Stage): object => ({
  until,
  scenario: { ...bare(scenario), programme: undefined },
});
