import type { Model } from '../../flow/model/model.js';
import { UNLIMITED } from '../../flow/model/model.js';
import { SEND_BACK } from '../../flow/model/quality.js';
import { CREW, STOCK } from '../../flow/model/resources.js';
import { isInKit } from '../../flow/model/steps.js';
import { rowsOf } from '../lists.js';
import { lowest, mostKept, mostStuck, mostWanted } from './enough.js';
import { type Next, nextOf } from './next.js';
import { nodesOf } from './nodes.js';
import type { Wait, Why } from './wait.js';

/**
 * Who may wait for whom, of all that is finite: places, trucks, carriers, crews of teams, sub-assemblies. A
 * circle in it is what a standstill needs (circular wait: Coffman, Elphick & Shoshani 1971, ACM Computing
 * Surveys 3, 67-78; from memory); that it comes about is not said. Crews without teams are in no circle:
 * nobody who holds them waits for anything but time.
 */
export function waitsOf(model: Model): Wait[] {
  const { steps, stations, companions, resources, routes } = model,
    nodes = nodesOf(model),
    next = nextOf(model),
    waits: Wait[] = [];
  const add = (from: number, to: number, why: Why, at: Partial<Wait>): void => {
    waits.push({ step: -1, next: -1, find: -1, of: -1, ...at, from, to, why });
  };
  /** Whether the unit keeps its place, or moves with its line. */
  const stays = (step: number, { step: to }: Next): boolean =>
    steps.station[step] >= 0 &&
    steps.station[to] >= 0 &&
    (steps.station[step] === steps.station[to]
      ? stations.lotMost[steps.station[step]] === 0
      : nodes.place(step) === nodes.place(to));
  const teamCrews = new Set([...companions.resource].filter((resource) => resources.kind[resource] === CREW));
  const here = (step: number): number => nodes.place(step),
    low = companions.names.map((_, id) => lowest(model, id));
  const mayHave = (id: number, step: number): boolean =>
    low[id] <= step && step <= companions.to[id] && step !== companions.from[id];

  const made = (route: number): number =>
    routes.own[route] === 1 ? nodes.own(route) : nodes.resource(routes.stock[route]);
  /** What a unit at a step may have from before: its place, carriers, a team, that it is in the making. */
  const has = (step: number, but = -1): readonly (readonly [node: number, of: number])[] => [
    [here(step), -1],
    ...companions.names.flatMap((_, id) =>
      id !== but && mayHave(id, step) ? [[nodes.resource(companions.resource[id]), id] as const] : [],
    ),
    ...(steps.route[step] > 0 ? [[made(steps.route[step]), -1] as const] : []),
  ];
  /**
   * The same of who waits for what a step takes besides its crew: for a kit a sub-assembly that has not
   * begun, unless it does the step again; ahead of the station a unit in the place where it comes from.
   */
  const whoWaits = (step: number, but = -1): ReturnType<typeof has> => {
    if (isInKit(model, step) && !isRepeated(model, step)) return [[made(steps.route[step]), -1]];
    return steps.asksAhead[step] === 1 ? next.before(step).flatMap((each) => has(each, but)) : has(step, but);
  };
  for (let step = 0; step < steps.count; step++) {
    if (model.sideBySide.group[step] >= 0) continue;
    for (const to of next.after(step)) {
      if (stays(step, to)) continue;
      const at = { step, next: to.step, find: to.find },
        why = to.find >= 0 ? 'back' : 'on';
      if (isFinite(model, step, to)) add(here(step), nodes.room(to.step), why, at);
      for (let id = 0; id < companions.count; id++)
        if (low[id] <= step && step <= companions.to[id])
          add(nodes.resource(companions.resource[id]), here(to.step), 'kept', { ...at, of: id });
    }
    if (steps.lane[step] >= 0 && nodes.room(step) !== here(step))
      add(nodes.room(step), here(step), 'on', { step, next: step });
    for (const row of next.withSides(step).flatMap((each) => rowsOf(steps.needStart, each))) {
      const resource = steps.needResource[row],
        kind = resources.kind[resource],
        amount = steps.needAmount[row];
      if (kind === STOCK)
        for (const [from] of whoWaits(step))
          add(from, nodes.resource(resource), 'parts', { step, of: routes.stock.indexOf(resource) });
      if (!teamCrews.has(resource) || mostKept(model, resource) <= resources.amount[resource] - amount)
        continue;
      for (const [from, id] of has(step))
        add(from, nodes.resource(resource), from === nodes.resource(resource) ? 'more' : 'claims', {
          step,
          of: id,
        });
    }
    for (const row of rowsOf(steps.ownStart, step)) {
      const route = steps.ownRoute[row];
      for (const [from] of has(step)) add(from, nodes.own(route), 'own', { step, of: route });
    }
  }

  for (let id = 0; id < companions.count; id++) {
    const resource = companions.resource[id];
    if (mostWanted(model, resource) <= resources.amount[resource]) continue;
    for (const { step, isAgain } of next.claims(id))
      for (const [from] of whoWaits(step, id))
        add(from, nodes.resource(resource), isAgain ? 'again' : 'claims', { step, of: id });
  }

  for (let route = 1; route < routes.count; route++)
    for (let step = routes.firstStep[route]; step < routes.firstStep[route + 1]; step++)
      if (model.sideBySide.group[step] < 0) add(made(route), here(step), 'made', { step, of: route });

  // Only a room that those who stand for ever can fill holds anybody up.
  const most = mostStuck(model, waits);
  return waits.filter(({ to }) => !nodes.isRoom(to) || (most.get(to) ?? 0) >= nodes.places(to));
}

/** Whether units that go on from a step may find no room there. */
function isFinite(model: Model, from: number, { step, find }: Next): boolean {
  const { steps, stations, lanes } = model;
  if (steps.lane[step] >= 0) return lanes.bank[steps.lane[step]] < UNLIMITED;
  const station = steps.station[step],
    ofRework = find < 0 ? 0 : stations.reworkBuffer[station];
  if (ofRework <= 0) return stations.buffer[station] < UNLIMITED;
  // Into a space of its own a unit makes room for those that it meets; out of a lot only the last one does.
  return ofRework < UNLIMITED && hasLot(model, step, from);
}

const hasLot = ({ steps, stations }: Model, first: number, last: number): boolean =>
  steps.station.subarray(first, last + 1).some((station) => station >= 0 && stations.lotMost[station] > 1);

/** Whether a unit may be sent back to the step or to one before it, from there or from behind it. */
const isRepeated = ({ steps, thens }: Model, step: number): boolean =>
  rowsOf(steps.findStart, step, steps.count).some((find) => {
    const then = steps.findThen[find],
      target = thens.target[then];
    return thens.kind[then] === SEND_BACK && target <= step && steps.route[target] === steps.route[step];
  });
