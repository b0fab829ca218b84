import type { Lack, Standstill, Stuck } from '../../flow/gridlock/stuck.js';
import type { Whereabouts } from '../../flow/gridlock/whereabouts.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import { count, exact } from '../format.js';

/** Replications that stood still: means over all replications have them in. */
export interface StandstillResult {
  readonly replications: number;
  /** Local date of the earliest of them; null if it is not known. */
  readonly first: string | null;
  /** Both in words, for wherever such means are shown. */
  readonly note: string;
}

/**
 * Null where none stood still.
 * @param ends of those that did, minutes since the programme's start
 * @param replications all there are
 */
export function standstills(
  ends: readonly number[],
  replications: number,
  clock: ProgrammeClock,
): StandstillResult | null {
  if (ends.length === 0) return null;
  const first = clock.date(ends.reduce((a, b) => Math.min(a, b))),
    isOne = ends.length === 1,
    on = first === null ? '' : ` (${isOne ? '' : 'first '}on ${first})`;
  return {
    replications: ends.length,
    first,
    note:
      `${exact(ends.length)} of ${count(replications, 'replication')} stood still${on}; ` +
      `${isOne ? 'its' : 'their'} values end there`,
  };
}

/** Most units named of those that stand alike, and most such groups. */
const MOST_NAMED = 4;

/** Units of the ring on one route that stand alike and lack the same. */
interface Group {
  readonly members: readonly number[];
  readonly first: Stuck;
}

/**
 * Who holds whom, in one sentence part: where each of the ring stands and what it lacks, in the order in
 * which one waits for the next; those who only wait behind it are counted.
 * @param unitRoute name of the unit's own route; sub-assemblies are called by theirs
 * @param nameOf what the planner calls the unit; its number, if left out
 */
export function whoWaits(
  { ring, behind }: Pick<Standstill, 'ring' | 'behind'>,
  unitRoute: string,
  nameOf: (each: Stuck) => string = ({ number }) => String(number),
): string {
  const { groups, isRing } = inOrder(ring),
    lacked = new Set(ring.flatMap(({ lacks }) => lacks.map(({ name }) => name)));
  const clauses = groups.slice(0, MOST_NAMED).map(({ members, first }) => {
    const names = members.map((member) => nameOf(ring[member])),
      one = names.length === 1,
      what = first.route !== unitRoute ? first.route : one ? 'unit' : 'units',
      keeps = first.keeps.filter((name) => lacked.has(name));
    return (
      `${what} ${some(names)} ${whereabouts(first)} ` +
      `${keeps.length > 0 ? `(with ${keeps.join(', ')}) ` : ''}${one ? 'waits' : 'wait'}` +
      first.lacks.map((lack, i) => `${i > 0 ? ' and' : ''} for ${wanted(lack, first, members)}`).join('')
    );
  });
  const rest = groups.slice(MOST_NAMED).reduce((sum, { members }) => sum + members.length, 0);
  return [
    [...clauses, ...(rest > 0 ? [`and ${rest} more wait likewise`] : [])].join(', '),
    ...(ring.length === 1
      ? []
      : isRing
        ? [': each waits for the next, and the last for the first']
        : [': none of them can go on before another does']),
    ...(behind > 0 ? [`; ${behind} more ${behind === 1 ? 'waits' : 'wait'} behind`] : []),
  ].join('');
}

/**
 * The groups, each where it can be behind one that waits for it; and whether they are a ring in which each
 * waits for the next alone.
 */
function inOrder(ring: readonly Stuck[]): { groups: Group[]; isRing: boolean } {
  const groups = new Map<string, { members: number[]; first: Stuck }>(),
    keys = ring.map((each) => {
      const lacks = each.lacks.map(({ kind, name }) => `${kind} ${name}`);
      return [each.route, each.in, each.where, ...lacks].join('\n');
    });
  ring.forEach((first, member) => {
    const known = groups.get(keys[member]);
    if (known === undefined) groups.set(keys[member], { members: [member], first });
    else known.members.push(member);
  });
  const waitedFor = (key: string): string[] => [
    ...new Set(
      groups
        .get(key)!
        .members.flatMap((member) =>
          ring[member].lacks.flatMap(({ by }) => by.map((holder) => keys[holder])),
        ),
    ),
  ];
  const order: string[] = [];
  const walk = (key: string): void => {
    if (order.includes(key)) return;
    order.push(key);
    waitedFor(key).forEach(walk);
  };
  keys.forEach(walk);
  return {
    groups: order.map((key) => groups.get(key)!),
    isRing:
      order.length > 1 && order.every((key, i) => waitedFor(key).join() === order[(i + 1) % order.length]),
  };
}

/** `at weld`, `ahead of weld`. */
export function whereabouts({ in: where, where: name }: Whereabouts): string {
  switch (where) {
    case 'place':
      return `at ${name}`;
    case 'space':
      return `ahead of ${name}`;
    case 'truck':
      return `in a truck of ${name}`;
    case 'outside':
      return 'outside';
  }
}

/** @param members of the ring who want it, like the first of them */
function wanted(lack: Lack, first: Stuck, members: readonly number[]): string {
  const { by } = lack,
    one = members.length === 1,
    what = wantedBy(lack, first, one);
  if (lack.kind === 'room' && first.in === 'space') return what;
  return one && by.length === 1 && by[0] === members[0] ? `${what}, which it holds itself` : what;
}

/** `room at weld`, `its doors`: what somebody waits for where it stands. */
export function wantedBy(
  { kind, name }: Pick<Lack, 'kind' | 'name'>,
  { in: where }: Whereabouts,
  one = true,
): string {
  switch (kind) {
    case 'room':
      return where === 'space' ? 'a place there' : `room at ${name}`;
    case 'truck':
      return `a truck of ${name}`;
    case 'dock':
      return `a dock of ${name}`;
    case 'pulse':
      return `${name} to move`;
    case 'own part':
      return `${one ? 'its' : 'their'} ${name}`;
    case 'crew':
      return `people of ${name}`;
    case 'supply':
      return `${name}, of which no more will come`;
    case 'lot':
      return `more units for a lot at ${name}`;
    case 'parts':
    case 'carrier':
      return name;
  }
}

/** `1`, `1 and 2`, `1, 2, 3, 4 and 5 more`. */
function some(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMED),
    last = names.length > MOST_NAMED ? `${names.length - MOST_NAMED} more` : shown.pop()!;
  return [...(shown.length > 0 ? [shown.join(', ')] : []), last].join(' and ');
}
