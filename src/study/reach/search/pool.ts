import { defined } from '../../lists.js';
import type { PossibleChanges } from '../../priced/sets.js';
import { type Changed, changedTo, orWhy } from '../../reliefs/changes.js';
import type { Replicator, Variant } from '../../run/replicator.js';
import type { Side } from '../../statistics/standard.js';
import { isShortByArithmetic } from './arithmetic.js';
import { type Counts, isWithin } from './choices.js';
import type { Setting } from './setting.js';

/** Replications of a set in the search: at first, and where it is not clear on which side it is. */
export const LOOKS = [8, 16, 32] as const;

/** Whether a set reaches the goal: surely, surely not, or it is close. */
export type Standing = 'reaches' | 'near' | 'short';

/** A set that can be run, and what it was seen to do, by criterion. */
interface Member {
  readonly counts: Counts;
  readonly changed: Changed;
  readonly runs: readonly Run[];
}

/** Compiled when it is first run. */
class Run {
  readonly values: number[] = [];
  private known: Variant<number> | undefined;

  constructor(private readonly make: () => Variant<number>) {}

  get variant(): Variant<number> {
    return (this.known ??= this.make());
  }
}

/** Sets that were run, each once, all in the same replications. */
export class Pool {
  private readonly members = new Map<string, Member | string>();
  private shorts: readonly Counts[] = [];
  private readonly reaching: Counts[] = [];
  /** Sets that were not run, as arithmetic says that they are short. */
  byArithmetic = 0;

  constructor(
    private readonly made: (counts: Counts) => ReturnType<PossibleChanges['made']>,
    private readonly setting: Setting,
    private readonly replicator: Replicator,
  ) {}

  /** Sets that were run. */
  get ran(): Counts[] {
    return [...this.members.values()].flatMap((member) =>
      typeof member === 'string' || seenOf(member).length === 0 ? [] : [member.counts],
    );
  }

  /** Why a set cannot be made, in words; null: it can. */
  whyNot(counts: Counts): string | null {
    const member = this.member(counts);
    return typeof member === 'string' ? member : null;
  }

  /** The build with a set made, one that can be. */
  build(counts: Counts): Changed {
    return this.able(counts).changed;
  }

  /** How a set is run in the search, by criterion; one that can be made. */
  variants(counts: Counts): readonly Variant<number>[] {
    return this.able(counts).runs.map(({ variant }) => variant);
  }

  /**
   * What was seen of a set by the first criterion in the first look, the same replications of all sets; none:
   * it was not run.
   */
  values(counts: Counts, look: number = LOOKS[0]): readonly number[] {
    const member = this.member(counts);
    return typeof member === 'string' ? [] : seenOf(member).slice(0, look);
  }

  /** The same as what they are worth, the greater the better. */
  worths(counts: Counts, look?: number): number[] {
    return this.values(counts, look).map(this.setting[0].goal.worth);
  }

  /** By these; -Infinity where there are none. */
  score(counts: Counts): number {
    const values = this.values(counts);
    return values.length === 0 ? -Infinity : this.setting[0].goal.score(values);
  }

  /** Runs what is missing of the first replications of each set, those that cannot be made left out. */
  async run(sets: readonly Counts[], to: number = LOOKS[0], criterion = 0): Promise<void> {
    const runs = [...new Set(sets.map((counts) => this.member(counts)))]
      .flatMap((member) => (typeof member === 'string' ? [] : (member.runs[criterion] ?? [])))
      .filter(({ values }) => values.length < to);
    // As many of each were run already: 0, or one of the looks.
    for (const known of new Set(runs.map(({ values }) => values.length))) {
      const these = runs.filter(({ values }) => values.length === known),
        rows = await this.replicator.rows(
          these.map(({ variant }) => variant),
          known + 1,
          to,
        );
      for (const [i, row] of rows.entries()) these[i]?.values.push(...row);
    }
  }

  /**
   * Where a set stands. One that is part of a set that is short is short too, as no change is taken to hurt;
   * so is one whose arithmetic is below the goal. One that cannot be made is close: nothing is known of it.
   */
  async standing(counts: Counts): Promise<Standing> {
    if (this.shorts.some((short) => isWithin(counts, short))) return 'short';
    const member = this.member(counts);
    if (typeof member === 'string') return 'near';
    if (seenOf(member).length === 0 && isShortByArithmetic(member.changed, this.leastPerDay)) {
      this.byArithmetic++;
      return this.ruledOut(counts);
    }
    let isNear = false;
    for (const criterion of this.setting.keys()) {
      const side = await this.side(counts, member, criterion);
      if (side === 'below') return this.ruledOut(counts);
      isNear ||= side === null;
    }
    if (!isNear) this.reaching.push(counts);
    return isNear ? 'near' : 'reaches';
  }

  /** Whether nothing that is known speaks against that a set is short: none of its parts reaches the goal. */
  mayBeShort(counts: Counts): boolean {
    return !this.reaching.some((set) => isWithin(set, counts));
  }

  /** Sets that are surely short, but for those that are part of others. */
  get largestShort(): readonly Counts[] {
    return this.shorts;
  }

  private ruledOut(counts: Counts): 'short' {
    this.shorts = [...this.shorts.filter((each) => !isWithin(each, counts)), counts];
    return 'short';
  }

  private get leastPerDay(): number {
    return Math.max(...this.setting.map(({ goal }) => goal.leastPerDay));
  }

  private async side(counts: Counts, { runs }: Member, criterion: number): Promise<Side> {
    const { goal } = defined(this.setting[criterion]);
    for (const look of LOOKS) {
      await this.run([counts], look, criterion);
      const side = goal.look(defined(runs[criterion]).values.slice(0, look));
      if (side !== null) return side;
    }
    return null;
  }

  private member(counts: Counts): Member | string {
    const key = counts.join(),
      known = this.members.get(key);
    if (known !== undefined) return known;
    const made = this.make(counts);
    this.members.set(key, made);
    return made;
  }

  private make(counts: Counts): Member | string {
    return orWhy(() => {
      const changed = changedTo(this.made(counts));
      return {
        ...{ counts, changed },
        runs: this.setting.map(({ variantOf }) => new Run(() => variantOf(changed))),
      };
    });
  }

  private able(counts: Counts): Member {
    const member = this.member(counts);
    if (typeof member === 'string')
      throw new Error(`expected a set that can be made, got one with ${member}`);
    return member;
  }
}

/** What was seen of a set by the first criterion. */
const seenOf = ({ runs }: Member): readonly number[] => defined(runs[0]).values;
