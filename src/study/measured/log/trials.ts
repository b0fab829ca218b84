import type { FloorEvent } from '../../../records/log/event.js';
import { FAILED } from '../../../records/log/of-run.js';
import { referredBy } from '../../../records/log/references.js';
import { allSteps } from '../../../scenario/lookup/placed.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { CountRow } from '../../chances/chance.js';
import { type Frame, isIn } from '../../validate/seen/frame.js';
import type { DefectCounts } from '../counts.js';
import { type MakerPlace, makersOf } from '../places.js';
import { Tallies } from './tallies.js';

/** A step that makes a kind of defect, and what is counted at the inspections after it. */
interface Maker extends MakerPlace {
  readonly kind: string;
  readonly counted: readonly Tallies[];
  /** Inspections to which some units come, so that it is not followed further. */
  readonly elsewhere: ReadonlySet<string>;
}

/** The first time that an object was at a maker: at which inspection it is next. */
interface Trial {
  readonly maker: Maker;
  next: number;
}

interface Followed {
  /** Makers at which it was. */
  readonly seen: Set<Maker>;
  trials: Trial[];
  /** What is found in the visit under way: kind and maker, '' where the log does not say. */
  readonly now: { readonly kind: string; readonly madeAt: string }[];
}

/**
 * What inspections find of what a step makes. Each object counts once a step, the first time that it is
 * there. It is at risk at each inspection in turn until the defect is found; it drops out, as one that is not
 * followed, where it comes to the step or to an inspection again, or is gone. So what other defects do to a
 * unit does not bend the shares (as Kaplan & Meier 1958 have it of those lost to follow-up). So does one that
 * comes to an inspection of some units only, a sample, where there are others.
 */
export class Trials {
  /** Finds of which several steps may be the maker, and the log does not say which. */
  unclear = 0;
  private readonly makers = new Map<string, Maker[]>();
  private readonly byStep = new Map<string, Maker[]>();
  private readonly tests = new Map<string, Tallies>();
  private readonly objects = new Map<string, Followed>();

  constructor(
    scenario: Scenario,
    private readonly frame: Frame,
    by: readonly string[],
  ) {
    for (const kind of Object.keys(scenario.defects)) {
      const makers = makersOf(scenario, kind).map((place): Maker => {
        const forAll = place.looks.filter(({ isForAll }) => isForAll),
          looks = forAll.length > 0 ? forAll : place.looks,
          elsewhere = new Set(place.looks.filter((look) => !looks.includes(look)).map(({ step }) => step));
        return { ...place, kind, looks, elsewhere, counted: looks.map(() => new Tallies(by)) };
      });
      this.makers.set(kind, makers);
      for (const maker of makers)
        this.byStep.set(maker.step, [...(this.byStep.get(maker.step) ?? []), maker]);
    }
    for (const { step } of allSteps(scenario))
      if (step.fails !== undefined) this.tests.set(step.name, new Tallies(by));
  }

  take(event: FloorEvent, options: Readonly<Record<string, string>>): void {
    const { kind, step, type, object } = event,
      key = `${type}:${object}`;
    switch (kind) {
      case 'start':
        this.begin(this.follow(key), step);
        break;
      case 'find': {
        const { defect = '', again, 'made at': madeAt = '' } = event.values;
        if (again !== 'yes') this.follow(key).now.push({ kind: defect, madeAt });
        break;
      }
      case 'end': {
        const followed = this.objects.get(key);
        if (followed !== undefined) this.looked(followed, step, options, isIn(event.at, this.frame));
        break;
      }
      case 'join':
        for (const other of event.others) this.join(this.follow(key), referredBy(other));
        break;
      case 'ship':
      case 'scrap':
        this.objects.delete(key);
        break;
      default:
    }
  }

  private follow(key: string): Followed {
    const known = this.objects.get(key) ?? { seen: new Set(), trials: [], now: [] };
    this.objects.set(key, known);
    return known;
  }

  private begin(followed: Followed, step: string): void {
    for (const maker of this.byStep.get(step) ?? []) {
      // Done again: what it made the first time is no longer told apart.
      followed.trials = followed.trials.filter((trial) => trial.maker !== maker);
      if (!followed.seen.has(maker)) followed.trials.push({ maker, next: 0 });
      followed.seen.add(maker);
    }
  }

  /** A part takes what was made of it along. */
  private join(host: Followed, { type, object }: { readonly type: string; readonly object: string }): void {
    const part = this.objects.get(`${type}:${object}`);
    if (part === undefined) return;
    host.trials.push(...part.trials);
    this.objects.delete(`${type}:${object}`);
  }

  /** The end of a visit: who was found drops out, who was not goes on to the next inspection. */
  private looked(
    followed: Followed,
    step: string,
    options: Readonly<Record<string, string>>,
    counts: boolean,
  ): void {
    const found = followed.now.splice(0),
      test = this.tests.get(step);
    if (counts)
      test?.add(
        options,
        found.some(({ kind }) => kind === FAILED),
      );
    // Of several parts alike the find is one's.
    const given = new Set<Maker>();
    followed.trials = followed.trials.filter((trial) => {
      const { maker } = trial,
        at = maker.looks.findIndex((look) => look.step === step);
      if (at < 0) return !maker.elsewhere.has(step);
      if (at < trial.next) return false;
      const ofKind = found.filter(({ kind }) => kind === maker.kind),
        isOnly = this.makers.get(maker.kind)?.length === 1;
      if (!isOnly && ofKind.some(({ madeAt }) => madeAt === '')) {
        this.unclear++;
        return false;
      }
      const isFound = !given.has(maker) && ofKind.some(({ madeAt }) => isOnly || madeAt === maker.step);
      if (isFound) given.add(maker);
      if (counts) maker.counted[at]?.add(options, isFound);
      trial.next = at + 1;
      return !isFound && trial.next < maker.looks.length;
    });
  }

  /** What was counted, by kind and maker, then of tests. */
  counts(from: string, to: string): DefectCounts[] {
    const rowsOf = (tallies: Tallies | undefined): readonly CountRow[] => tallies?.rows() ?? [];
    return [
      ...[...this.makers.values()].flat().map(({ kind, step, looks, counted }) => ({
        ...{ defect: kind, madeAt: step, from, to },
        looks: looks.map((look, i) => ({ step: look.step, rows: rowsOf(counted[i]) })),
      })),
      ...[...this.tests].map(([step, tallies]) => ({
        ...{ defect: FAILED, madeAt: null, from, to },
        looks: [{ step, rows: rowsOf(tallies) }],
      })),
    ].filter(({ looks }) => looks.some(({ rows }) => rows.length > 0));
  }
}
