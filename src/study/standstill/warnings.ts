import type { Model } from '../../flow/model/model.js';
import { CREW } from '../../flow/model/resources.js';
import { compile } from '../../scenario/compile.js';
import { allSteps } from '../../scenario/lookup/placed.js';
import type { Path } from '../../scenario/types/problem.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { demand } from '../capacity/demand.js';
import { count, exact, number } from '../format.js';
import { sum } from '../statistics/sums.js';
import { type Circle, canFill, circlesOf } from './circles.js';
import { mostByRoom } from './enough.js';
import { type Nodes, nodesOf } from './nodes.js';
import { waitElsewhere } from './remedies.js';
import type { Wait } from './wait.js';
import { waitsOf } from './waits.js';

/** A shape of the scenario that may lead to a standstill: a warning, no fault. */
export interface ShapeWarning {
  /** Where it stands in the scenario. */
  readonly path: Path;
  /** What may happen, and what rules it out. */
  readonly text: string;
  readonly remedy: string;
}

/**
 * Shapes in which units may come to wait for each other for good, without running: one for each key that
 * makes it so, told by its shortest circle of waits. Where changes come on their dates, with all of them.
 */
export function standstillWarnings(whole: Model, scenario: Scenario): ShapeWarning[] {
  const isDated = scenario.before !== undefined,
    last = isDated ? { ...scenario, before: undefined } : scenario,
    model = isDated ? compile(last) : whole,
    nodes = nodesOf(model),
    found = new Map<string, ShapeWarning>();
  for (const circle of circlesOf(waitsOf(model), nodes.count)) {
    if (!canFill(model, circle)) continue;
    const warning = worded({ model, scenario: last, nodes }, circle),
      // Of a carrier or a team one is enough.
      key = JSON.stringify(warning.path[0] === 'route' ? warning.path : warning.path.slice(0, 2));
    if (!found.has(key)) found.set(key, warning);
  }
  return [...found.values(), ...endingSupplies(model, last)];
}

/** Bought-in parts of which fewer come in all than the units of the programme take. */
function endingSupplies(model: Model, { supplies, programme: { quantity } }: Scenario): ShapeWarning[] {
  if (quantity === undefined) return [];
  return Object.entries(supplies).flatMap(([name, { order, atStart }], id): ShapeWarning[] => {
    const taken = quantity * demand(model).taken[model.supplies.resource[id]],
      comes = atStart + sum(model.supplies.planLots[id]);
    // A rhythm without an end goes on behind the run.
    const goesOn = order.kind === 'reorder' || (order.kind === 'rhythm' && order.to === undefined);
    if (goesOn || comes >= taken) return [];
    return [
      {
        path: ['supplies', name],
        text:
          `${exact(comes)} of ${name} come in all, and ${count(quantity, 'unit')} take about ` +
          `${number(taken)}: whoever finds none stands for good`,
        remedy: 'more or larger deliveries',
      },
    ];
  });
}

interface Of {
  readonly model: Model;
  readonly scenario: Scenario;
  readonly nodes: Nodes;
}

/** By the key that closes the circle: the rarest reason in it. */
function worded(of: Of, circle: Circle): ShapeWarning {
  const first = (is: (wait: Wait) => boolean): Wait | undefined => circle.find(is),
    more = first(({ why }) => why === 'more');
  if (more !== undefined) return moreOfCrew(of, more);
  const again = first(({ why }) => why === 'again');
  if (again !== undefined) return claimedAgain(of, again, circle);
  const back = first(({ find }) => find >= 0);
  if (back !== undefined) return sentBack(of, back, circle);
  const part = first(({ why }) => why === 'parts' || why === 'own');
  if (part !== undefined) return partsThrough(of, part, circle);
  const claim = first(({ why, of: id }) => why === 'claims' && id >= 0) ?? first(({ why }) => why === 'kept');
  return claim === undefined ? bothWays(of, circle) : keptBy(of, claim, circle);
}

function sentBack(of: Of, { step, find, next }: Wait, circle: Circle): ShapeWarning {
  const { model, nodes } = of,
    { steps, stations } = model,
    station = steps.station[next],
    keeps = circle.flatMap((wait) => (wait.why === 'kept' ? wait.of : []));
  const room = stations.reworkBuffer[station] > 0 ? [] : [`a rework buffer at ${stations.names[station]}`];
  return {
    path: pathOfFind(of, step, find),
    text: `units sent back to ${steps.names[next]} may stand for good: ${chain(nodes, circle)}`,
    remedy: [...room, ...keeps.flatMap((id) => enoughOf(model, id))].join(', or ') || 'more room on the way',
  };
}

function claimedAgain(of: Of, { of: id, step }: Wait, circle: Circle): ShapeWarning {
  const { model, nodes } = of,
    name = model.companions.names[id];
  return {
    path: [...pathOf(model, id), 'in rework'],
    text:
      `a unit sent back may want ${name} at ${model.steps.names[step]} while units that have it want its ` +
      `place: ${chain(nodes, circle)}`,
    remedy: ['in rework: without', ...enoughOf(model, id)].join(', or '),
  };
}

function moreOfCrew({ model }: Of, { of: id, step }: Wait): ShapeWarning {
  const { companions, resources, steps } = model,
    resource = companions.resource[id],
    crew = resources.names[resource];
  const most = Math.max(
    ...Array.from(steps.needResource.keys()).flatMap((row) =>
      steps.needResource[row] === resource ? steps.needAmount[row] : [],
    ),
  );
  const enough = mostByRoom(model, resource) + most;
  return {
    path: [...pathOf(model, id), 'people'],
    text:
      `units with ${companions.names[id]} may hold all people of ${crew} while ${steps.names[step]} wants ` +
      'more of them',
    remedy: Number.isFinite(enough)
      ? `${enough} people in ${crew}`
      : `a crew of its own for ${companions.names[id]}, or for the step`,
  };
}

function partsThrough({ model, nodes }: Of, { of: route }: Wait, circle: Circle): ShapeWarning {
  const name = model.routes.names[route];
  return {
    path: ['feeders', name],
    text: `what waits for ${name} may stand where they have to go through: ${chain(nodes, circle)}`,
    remedy: `${waitElsewhere(model, circle)}a station of their own for ${name}`,
  };
}

function keptBy({ model, nodes }: Of, { of: id }: Wait, circle: Circle): ShapeWarning {
  const name = model.companions.names[id];
  return {
    path: pathOf(model, id),
    text: `units that have ${name} may wait for those that want it: ${chain(nodes, circle)}`,
    remedy: enoughOf(model, id)[0] ?? `${name} claimed first by all, or another way of the units`,
  };
}

function bothWays(of: Of, circle: Circle): ShapeWarning {
  const { model, scenario, nodes } = of,
    last = circle.reduce((a, b) => (b.next > a.next ? b : a)),
    name = model.steps.names[last.next];
  return {
    path: stepPath(scenario, name) ?? ['route'],
    text: `units may meet on the way to ${name} and stand for good: ${chain(nodes, circle)}`,
    remedy: `a station of its own for ${name}, or a buffer that is never full`,
  };
}

/** `weld may wait for check, check for weld`. */
function chain(nodes: Nodes, circle: Circle): string {
  const names = circle.map(({ from }) => nodes.nameOf(from)),
    shown = names.slice(0, MOST_NAMED);
  const links = shown.map((name, i) => {
    const next = names[(i + 1) % names.length];
    return i === 0 ? `${name} may wait for ${next === name ? 'itself' : next}` : `${name} for ${next}`;
  });
  return links.join(', ') + (names.length > MOST_NAMED ? ` and so on, back to ${names[0]}` : '');
}
const MOST_NAMED = 4;

/** How many of a carrier, or people for a team, are always enough; nothing where no number is. */
function enoughOf(model: Model, id: number): string[] {
  const { companions, resources } = model,
    resource = companions.resource[id],
    enough = mostByRoom(model, resource);
  if (!Number.isFinite(enough)) return [];
  return resources.kind[resource] === CREW
    ? [`${enough} people in ${resources.names[resource]}`]
    : [`${enough} of ${companions.names[id]}`];
}

const pathOf = ({ companions, resources }: Model, id: number): Path => [
  resources.kind[companions.resource[id]] === CREW ? 'teams' : 'carriers',
  companions.names[id],
];

const stepPath = (scenario: Scenario, name: string): Path | undefined =>
  allSteps(scenario).find(({ step }) => step.name === name)?.path;

function pathOfFind({ model, scenario }: Of, step: number, find: number): Path {
  const { steps, slots } = model,
    slot = steps.findSlot[find],
    path = stepPath(scenario, steps.names[step]);
  if (path === undefined) return ['route'];
  return [...path, ...(slot < 0 ? ['fails'] : ['finds', slots.kindNames[slots.kind[slot]]]), 'back to'];
}
