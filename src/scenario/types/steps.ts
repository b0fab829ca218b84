import type { Distribution } from '../../random/distribution.js';

export type RouteEntry = StationStep | LaneStep;
export interface LaneStep {
  readonly kind: 'lane';
  readonly lane: string;
  readonly when: Condition;
}
export interface StationStep {
  readonly kind: 'step';
  readonly name: string;
  readonly at: string;
  readonly when: Condition;
  readonly crew: Readonly<Record<string, number>>;
  readonly equipment?: Readonly<Record<string, EquipmentNeed>> | undefined;
  readonly work: Distribution | undefined;
  /** `work` is then the work of one pass. */
  readonly passes:
    | { readonly count: number; readonly work: Distribution; readonly settle: Distribution | undefined }
    | undefined;
  /** Unattended, after the work. */
  readonly process: Distribution | undefined;
  /** The process ends only while somebody is on shift. */
  readonly attendedEnd: boolean;
  readonly oneShift: boolean;
  /** option -> value -> factor on work times. */
  readonly workFactor: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly learning: Learning | undefined;
  /** What the station has to be set to. */
  readonly setting?: Setting | undefined;
  readonly rework: 'both' | 'skip' | 'only';
  readonly sample: { readonly oneIn: number; readonly by: 'turn' | 'random' } | undefined;
  /** Feeder or supply -> how many (from a stock), or 'own'. */
  readonly parts: Readonly<Record<string, number | 'own'>>;
  /** The unit waits for its parts ahead of the station; undefined: in a place of it. */
  readonly waitForParts: 'in buffer' | undefined;
  /** Own feeders that start from this unit when the step ends. */
  readonly takesOff: readonly string[];
  readonly creates: Readonly<Record<string, Chance>>;
  readonly finds: Readonly<Record<string, Find>>;
  readonly fails: Find | undefined;
  /**
   * Units with noted items stop here and are mended; `mend` is the work on one that has no time of its own.
   */
  readonly hold: { readonly mend: TimeByOption | undefined } | undefined;
  /** An earlier inspection that measured the same, and the extra work where the two differ. */
  readonly comparesWith: { readonly step: string; readonly differs: Distribution | undefined } | undefined;
  /**
   * Steps done side by side in one place of `at`; this one then has no work of its own, and a name made of
   * theirs.
   */
  readonly sideBySide: readonly StationStep[] | undefined;
}
/** Pieces of equipment, for the first or the last minutes of the work or, with neither, for all of it. */
export interface EquipmentNeed {
  readonly count: number;
  readonly first: Distribution | undefined;
  readonly last: Distribution | undefined;
}
/**
 * Work time falls with the number built: each doubling multiplies it by `rate`, down to `floor` of the first
 * unit's.
 */
export interface Learning {
  readonly rate: number;
  /** Of the unit's own time (Crawford), or of the mean of all so far (Wright). */
  readonly curve: 'unit' | 'cumulative mean';
  readonly floor: number;
  readonly builtBefore: number;
}
/** One setting for all units, or one by the value of an option. */
export interface Setting {
  /** Where the option does not say otherwise; undefined: every value has its own. */
  readonly usual: string | undefined;
  readonly option: string | undefined;
  readonly byValue: Readonly<Record<string, string>>;
}
/** option -> values that meet it; all options must be met. */
export type Condition = Readonly<Record<string, readonly string[]>>;
export interface Chance {
  readonly usual: number;
  readonly byOption: readonly { readonly option: string; readonly value: string; readonly chance: number }[];
}
/** A time, or several of which the unit's options choose. */
export type TimeByOption = Distribution | OptionTimes;
/** The first row that a unit meets counts, otherwise the usual time. */
export interface OptionTimes {
  readonly kind: 'by option';
  readonly usual: Distribution;
  readonly rows: readonly { readonly option: string; readonly value: string; readonly time: Distribution }[];
}
export interface Find {
  readonly chance: Chance;
  readonly then:
    | { readonly kind: 'repair'; readonly work: TimeByOption }
    | {
        readonly kind: 'back';
        readonly to: string;
        /** Most send-backs of a unit; undefined: no limit. */
        readonly limit: number | undefined;
        readonly atLimit: 'pass' | 'scrap';
        /** Lanes to a step at another site, one after the other; undefined: those that lead there. */
        readonly by: readonly string[] | undefined;
      }
    | { readonly kind: 'scrap' }
    /** Noted and left open; mended at the next hold. */
    | { readonly kind: 'carry'; readonly work: TimeByOption };
}

export interface Feeder {
  readonly kind: 'stock' | 'own';
  /** Pull loop: stock and sub-assemblies in the making together. 0 for own parts. */
  readonly target: number;
  readonly atStart: number;
  /** False: a sub-assembly claims its parts step by step; undefined: all of them before it begins. */
  readonly fullKit: false | undefined;
  readonly route: readonly RouteEntry[];
}
