import type { Model } from '../../../flow/model/model.js';
import { wholePower } from '../../../random/power.js';
import { allSteps, findsOf, type StationedStep, stationsOf } from '../../../scenario/lookup/placed.js';
import { teamsOf } from '../../../scenario/plant/teams.js';
import type { ThingKind } from '../../../scenario/reliefs/thing.js';
import type { Path } from '../../../scenario/types/problem.js';
import type { Assumption, Scenario } from '../../../scenario/types/scenario.js';
import { own } from '../../../scenario/values/raw.js';
import { changeOf } from '../../../scenario/vary.js';
import type { LimitKind } from '../../capacity/limits.js';
import type { Loads } from './loads.js';
import { stepShares } from './step-shares.js';

/**
 * A resource with half the load of the constraint bears less than a hundredth of what that bears: what is far
 * from its limit hardly matters. Our own convention.
 */
const STEEPNESS = 8;
/**
 * A chance of rework moves only the work that is done again, a failure or an absence only the time that it
 * takes, and room and what is there at the start only what they keep from waiting: taken as a tenth.
 */
const A_PART = 0.1;
const OF_ROOM: readonly unknown[] = ['buffer', 'rework buffer', 'bank', 'arrival bank', 'at start'],
  OF_TIME_LOST = ['failures', 'absence'],
  OF_QUALITY: readonly unknown[] = ['finds', 'fails', 'creates', 'hold', 'sample', 'rework', 'compares with'];

/** How much what is shipped may hang on something, 0 to 1; of what is not known 0. */
export type Weights = Loads;

/** By loads: steeply, so that only what is near its limit counts. */
export const byLoad =
  (loads: Loads): Weights =>
  (...thing) =>
    wholePower(loads(...thing), STEEPNESS);

/** A resource that a value is about: its weight, and the share of its load which the value moves. */
interface Moved {
  readonly weight: number;
  readonly share: number;
}

/**
 * How much a value may bear on the throughput, to sort values by before they are run; no more than a hint.
 * It is the weight of a resource times the share by which the eighth power of its load rises where the value
 * moves its share of that to the worse end of its range; the greatest over the resources that the value is
 * about. The mix of options bears on all; prices bear on nothing.
 */
export function bearings(
  scenario: Scenario,
  model: Model,
  weights: Weights,
): (assumption: Assumption) => number {
  const inRoutes = new InRoutes(scenario, model, weights),
    stations = [...stationsOf(scenario).keys()],
    all = (kind: ThingKind, names: readonly string[], site?: string): Moved[] =>
      names.map((name) => ({ weight: weights(kind, name, site), share: 1 })),
    teams = teamsOf(scenario).map(({ name, kind: { crew }, steps: [first] }) => ({
      ...{ name, crew },
      site: first?.where?.siteName ?? '',
    })),
    // Of room itself the value is no part.
    room = (at: Path, name: string, site?: string): Moved[] =>
      OF_ROOM.includes(at.at(-1)) ? [{ weight: weights('room', name, site), share: 1 / A_PART }] : [];
  const of = (at: Path): readonly Moved[] => {
    const [section, name = '', part, inner = ''] = at.map(String);
    switch (section) {
      case 'programme':
        return name === 'options' ? [{ weight: 1, share: 1 }] : [];
      case 'calendars':
        return [...all('station', stations), ...all('hours', [name])];
      case 'sites':
        return part === 'crews'
          ? [
              ...all('crew', [inner], name),
              ...teams.flatMap(({ crew, site, name: team }) =>
                crew === inner && site === name ? all('team', [team], site) : [],
              ),
            ]
          : part === 'equipment'
            ? all('equipment', [inner], name)
            : [...all('station', [inner]), ...room(at, inner, name)];
      case 'lanes':
        return [...all('lane', [name]), ...room(at, name)];
      case 'carriers':
        return all('carrier', [name]);
      case 'supplies':
        return all('supply', [name]);
      case 'teams':
        return teams
          .filter((team) => team.name === name)
          .flatMap(({ crew, site }) => [...all('crew', [crew], site), ...all('team', [name], site)]);
      case 'pulse lines':
        return all('station', own(scenario.pulseLines, name)?.stations ?? []);
      case 'feeders':
        return part === 'route' ? inRoutes.of(at) : all('feeder', [name]);
      case 'route':
        return inRoutes.of(at);
      default:
        return [];
    }
  };
  return (assumption) => {
    const isPart =
        OF_ROOM.includes(assumption.at.at(-1)) || OF_TIME_LOST.some((key) => assumption.at.includes(key)),
      change = changeOf(assumption) * (isPart ? A_PART : 1);
    return Math.max(
      0,
      ...of(assumption.at).map(
        ({ weight, share }) => weight * (wholePower(1 + change * share, STEEPNESS) - 1),
      ),
    );
  };
}

/** What a value in a route moves. */
class InRoutes {
  private readonly steps: readonly StationedStep[];
  private readonly shares: ReturnType<typeof stepShares>;

  constructor(
    private readonly scenario: Scenario,
    model: Model,
    private readonly weights: Weights,
  ) {
    this.steps = allSteps(scenario);
    this.shares = stepShares(model);
  }

  of(at: Path): Moved[] {
    const [placed] = this.steps
      .filter(({ path }) => path.every((part, i) => part === at[i]))
      .sort((a, b) => b.path.length - a.path.length);
    if (placed === undefined) return this.ofLane(at);
    const { weights } = this,
      [key, name] = at.slice(placed.path.length);
    if (key === 'parts')
      return (['supply', 'feeder'] as const).map((kind) => ({
        weight: weights(kind, String(name)),
        share: 1,
      }));
    if (key === 'crew' || key === 'equipment') return this.ofStep(placed, key);
    return OF_QUALITY.includes(key) ? this.doneAgain(placed) : this.ofStep(placed);
  }

  private ofLane(at: Path): Moved[] {
    const { scenario, weights } = this,
      [entries, i] =
        at[0] === 'route' ? [scenario.route, at[1]] : [own(scenario.feeders, String(at[1]))?.route, at[3]],
      entry = entries?.[Number(i)];
    return entry?.kind === 'lane' ? [{ weight: weights('lane', entry.lane), share: 1 }] : [];
  }

  /** Steps from where units are sent back to; of a defect that is found elsewhere all of the route. */
  private doneAgain(placed: StationedStep): Moved[] {
    const inRoute = this.steps.filter(({ route }) => route === placed.route),
      targets = findsOf(placed).flatMap(({ find: { then } }) =>
        then.kind === 'back' ? inRoute.filter(({ step }) => step.name === then.to) : [],
      ),
      from = Math.min(placed.index, ...targets.map(({ index }) => index));
    const isFoundElsewhere = Object.keys(placed.step.creates).length > 0;
    return inRoute
      .filter(({ index }) => isFoundElsewhere || (from <= index && index <= placed.index))
      .flatMap((each) => this.ofStep(each))
      .map(({ weight, share }) => ({ weight, share: A_PART * share }));
  }

  private ofStep({ step: { name } }: StationedStep, only?: LimitKind): Moved[] {
    return (this.shares.get(name) ?? [])
      .filter(({ kind }) => only === undefined || kind === only)
      .map(({ kind, name, site, share }) => ({ weight: this.weights(kind, name, site), share }));
  }
}
