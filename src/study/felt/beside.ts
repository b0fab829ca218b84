import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Replicator, Variant } from '../run/replicator.js';
import { unfelt } from './unfelt.js';

/** What is run beside a base: `read` is that of its own model. */
interface Member<Value> extends Variant<Value> {
  readonly model: Model;
}

/** Of a replication of the base: its own value, and by key those of members that it is known to be. */
interface Seen<Value> {
  readonly own: Value;
  readonly others: Readonly<Record<string, Value>>;
}

/**
 * Replications of a base, and of each change that is set against it what is known from these without a run:
 * a replication in which nobody wanted what there is more of.
 */
export class Beside<Value> {
  private readonly seen: Seen<Value>[] = [];
  private readonly variant: Variant<Seen<Value>>;

  constructor(base: Member<Value>, members: readonly Member<Value>[]) {
    const proofs = members.flatMap(({ key, model, read }) => {
      const proof = unfelt(base.model, model);
      return proof === null ? [] : { key, proof, read };
    });
    this.variant = {
      key: base.key,
      model: base.model,
      read: (seen) => ({
        own: base.read(seen),
        others: Object.fromEntries(
          proofs.flatMap(({ key, proof, read }) =>
            proof.leaves(seen) ? [[key, read(proof.changed(seen))]] : [],
          ),
        ),
      }),
    };
  }

  /** Takes in the next replications, which somebody else has run. */
  take(observations: readonly Observation[]): void {
    this.seen.push(...observations.map(this.variant.read));
  }

  /** Runs the base up to a replication. */
  async run(replicator: Replicator, to: number): Promise<void> {
    this.seen.push(...(await replicator.row(this.variant, this.seen.length + 1, to)));
  }

  /** Of the base, in order. */
  get own(): Value[] {
    return this.seen.map(({ own }) => own);
  }

  /** A member that is run only where it is not known. */
  with<Its extends Member<Value>>(member: Its): Its & Variant<Value> {
    return { ...member, known: (replication: number) => this.of(member, replication) };
  }

  /** What a replication of a member is known to be; undefined: it is not. */
  of({ key }: Pick<Member<Value>, 'key'>, replication: number): Value | undefined {
    return this.seen[replication - 1]?.others[key];
  }

  /** How many of the first replications of a member are known. */
  knownIn({ key }: Pick<Member<Value>, 'key'>, replications: number): number {
    return this.seen.slice(0, replications).filter(({ others }) => Object.hasOwn(others, key)).length;
  }
}
