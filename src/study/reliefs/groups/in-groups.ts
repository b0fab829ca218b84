import type { Beside } from '../../felt/beside.js';
import { defined } from '../../lists.js';
import type { Replicator, Variant } from '../../run/replicator.js';
import type { Changed } from '../changes.js';
import type { Screening } from '../forecast.js';
import type { Relief } from '../relief.js';
import { type Compared, gainsOver, type Screened } from '../runs.js';
import { Bifurcation, type BifurcationOptions, type Node } from './bifurcation.js';
import { byArithmetic } from './by-load.js';
import { type Harm, harmOf } from './harm.js';
import { grouped, together } from './together.js';

/** Looked at together, so that threads have something to do. */
const AT_ONCE = 4;

type Member = Changed & Variant<Compared> & { readonly of: Relief };

export interface InGroupsOptions extends BifurcationOptions {
  readonly base: Changed;
  readonly reliefs: readonly Member[];
  readonly beside: Beside<Compared>;
  /** Whether units are counted with it as without it, so that it may be tried with others. */
  readonly mayJoin: (relief: Changed) => boolean;
  readonly toRead: (changed: Changed) => Changed & Variant<Compared>;
  readonly replicator: Replicator;
  readonly told: (screening: Screening) => void;
}

/** Reliefs that were given up together, and what all of them at once gain in each replication. */
export interface Group {
  readonly members: readonly Member[];
  readonly row: readonly Compared[];
}

export interface InGroups {
  readonly alone: readonly Screened<Member>[];
  readonly groups: readonly Group[];
  /** What showed that some take away what others gain, see `harmOf`. */
  readonly harm: Harm<Member>;
  /** Replications that were run. */
  readonly run: number;
}

/** Screens reliefs by groups, see `Bifurcation`; what no replication of the base felt is not run at all. */
export async function inGroups(options: InGroupsOptions): Promise<InGroups> {
  const { base, beside, most, replicator, told } = options,
    ofBase = beside.own,
    known = options.reliefs.filter((relief) => beside.knownIn(relief, most) === most),
    reliefs = options.reliefs.filter((relief) => !known.includes(relief)),
    screen = new Bifurcation(
      grouped(reliefs, options.mayJoin, byArithmetic(base.scenario, base.model)),
      options,
    ),
    variants = new Map<Node, Variant<Compared> | null>(),
    rows = new Map<Node, Compared[]>();
  let run = 0;
  const membersOf = ({ members }: Node): Member[] => members.map((i) => defined(reliefs[i]));
  const variantOf = (node: Node): Variant<Compared> | null => {
    const members = membersOf(node),
      [first, ...others] = members;
    if (others.length === 0) return beside.with(defined(first));
    const all = together(base, members);
    return (
      all && {
        ...options.toRead(all),
        // Of changes that nobody felt there may be any number.
        known: (replication) =>
          members.every((member) => beside.of(member, replication) !== undefined)
            ? ofBase[replication - 1]
            : undefined,
      }
    );
  };
  const play = async (node: Node, to: number): Promise<void> => {
    if (!variants.has(node)) variants.set(node, variantOf(node));
    const variant = variants.get(node) ?? null;
    if (variant === null) {
      screen.split(node);
      return;
    }
    const from = node.gains.length,
      row = await replicator.row(variant, from + 1, to);
    for (let replication = from + 1; replication <= to; replication++)
      if (variant.known?.(replication) === undefined) run++;
    rows.set(node, [...(rows.get(node) ?? []), ...row]);
    seen.push({ node, row });
  };
  const seen: { readonly node: Node; readonly row: readonly Compared[] }[] = [];
  for (let next = screen.next(AT_ONCE); next.length > 0; next = screen.next(AT_ONCE)) {
    await Promise.all(next.map(async ({ node, to }) => play(node, to)));
    // In this order, whichever was over first.
    for (const { node } of next) {
      const row = seen.find((each) => each.node === node)?.row;
      if (row !== undefined) screen.take(node, gainsOver(ofBase, row, 'throughput', node.gains.length));
    }
    seen.length = 0;
    told(screen.screening(run));
  }
  const { nodes } = screen,
    rowOf = (node: Node): Compared[] => rows.get(node) ?? [];
  return {
    alone: [
      ...nodes
        .filter(({ members, end }) => members.length === 1 && end !== 'split')
        .map((node) => ({
          member: defined(membersOf(node)[0]),
          row: rowOf(node),
          out: node.end === 'to the end' ? null : screen.isNothing(node) ? 'no effect' : 'behind',
        })),
      ...known.map((member) => ({
        member,
        row: ofBase.map((_, r) => defined(beside.of(member, r + 1))),
        out: 'not felt',
      })),
    ] as Screened<Member>[],
    groups: nodes
      .filter(({ members, end }) => members.length > 1 && end === 'given up')
      .map((node) => ({ members: membersOf(node), row: rowOf(node) })),
    harm: harmOf(nodes, options.level, membersOf),
    run,
  };
}
