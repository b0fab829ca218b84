import type { Model } from '../../../flow/model/model.js';
import { SEND_BACK } from '../../../flow/model/quality.js';
import { CREW } from '../../../flow/model/resources.js';
import { REWORK_ONLY } from '../../../flow/model/steps.js';
import { rowsOf } from '../../lists.js';
import { chanceToMeet } from '../means.js';
import type { Build } from '../mix.js';

/**
 * A carrier or team to whose steps units may be sent back that have given it back, or a team that is left
 * behind when a unit is sent back to another site (rule 7). A column of each
 * stream counts its units that have had it and are without.
 */
export class Stay {
  /** In the sweep so far: times that it is claimed again, and visits without it, by step of the route. */
  claimedAgain = 0;
  readonly without: Float64Array;

  /** @param claimedAt where all are taken to claim it: the first step that a unit of the build may do */
  constructor(
    readonly id: number,
    readonly column: number,
    private readonly from: number,
    private readonly to: number,
    private readonly claimedAt: number,
    private readonly isClaimedAgain: boolean,
    private readonly isTeam: boolean,
    private readonly firstStep: number,
    steps: number,
  ) {
    this.without = new Float64Array(steps);
  }

  startSweep(): void {
    this.claimedAgain = 0;
    this.without.fill(0);
  }

  /** A unit sent back to another site from this step leaves it behind: people stay at their site. */
  isLeftAt(step: number): boolean {
    return this.isTeam && this.from <= step && step <= this.to;
  }

  /** A stream has come to a step. */
  meet(
    { units, open }: { readonly units: number; readonly open: Float64Array },
    step: number,
    mayClaim: boolean,
  ): void {
    const { column } = this;
    if (step < this.from) return;
    if (step > this.to) open[column] = units;
    else if (mayClaim && (this.isClaimedAgain || step <= this.claimedAt)) {
      this.claimedAgain += open[column];
      open[column] = 0;
    } else this.without[step - this.firstStep] += open[column];
  }
}

/** Nothing is claimed at a lane, for single units of a lot, or by one of several steps side by side. */
export const mayClaimAt = ({ steps, stations, sideBySide }: Model, step: number): boolean =>
  steps.station[step] >= 0 && stations.lotMost[steps.station[step]] === 0 && sideBySide.group[step] < 0;

/** Those of a route, their columns from `column` on. */
export function staysOn(model: Model, route: number, build: Build, column: number): Stay[] {
  const { companions, resources, steps, routes, thens } = model,
    first = routes.firstStep[route],
    end = routes.firstStep[route + 1];
  const comesBack = (to: number): boolean =>
    rowsOf(steps.findStart, to + 1, end).some((find) => {
      const then = steps.findThen[find];
      return thens.kind[then] === SEND_BACK && thens.target[then] <= to;
    });
  const goesAway = (from: number, to: number): boolean =>
    rowsOf(steps.findStart, from, to + 1).some((find) => thens.way[steps.findThen[find]] >= 0);
  const claims = (step: number): boolean =>
    mayClaimAt(model, step) && steps.rework[step] !== REWORK_ONLY && chanceToMeet(model, build, step) > 0;
  return companions.names.flatMap((_, id) => {
    const from = companions.from[id],
      to = companions.to[id];
    const isTeam = resources.kind[companions.resource[id]] === CREW,
      isLeft = isTeam && goesAway(from, to);
    if (steps.route[from] !== route || !(comesBack(to) || isLeft)) return [];
    let at = from;
    while (at < to && !claims(at)) at++;
    return [new Stay(id, column++, from, to, at, companions.again[id] === 1, isTeam, first, end - first)];
  });
}
