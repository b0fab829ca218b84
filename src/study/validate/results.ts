import type { LogTold } from '../../records/log-told.js';
import type { ResultsHead } from '../head.js';
import type { Topic } from './seen/measures.js';
import type { WipByDay } from './wip-by-day.js';

/** One measure of the real log beside what builds of the model have. */
export interface Compared {
  readonly topic: Topic;
  readonly of: string;
  readonly what: string;
  /** Null where the log has none. */
  readonly real: number | null;
  readonly n: number;
  /** Of the simulated logs; bounds for one build, all measures together at the level. Null: not judged. */
  readonly simulated: { readonly middle: number; readonly low: number; readonly high: number } | null;
  /** Chance of a gap so large if the model is right, adjusted for all measures; null: not judged. */
  readonly adjusted: number | null;
  readonly agrees: boolean | null;
}

/** An input that does not agree with the log. */
export interface Cause extends Compared {
  /** `working minutes of wire: 62.1 in the log, 54.0 in the model` */
  readonly words: string;
  /** Another input that does not agree brings it about, or may. */
  readonly follows: boolean;
}

/** What the model is used for, and whether the log is against it. */
export interface Use {
  readonly use: string;
  readonly may: boolean | null;
  readonly why: string;
}

export interface DayRow {
  /** Days since the start of the period, from 1. */
  readonly day: number;
  readonly date: string;
  /** Units shipped since the start of the period; of simulated ones the least, middle and most. */
  readonly real: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface ValidateResults extends ResultsHead<'validate'> {
  readonly replications: number;
  readonly log: LogTold & { readonly file: string };
  /** ISO dates: first day, and the day at the start of which the period ends. */
  readonly period: { readonly from: string; readonly to: string; readonly days: number };
  readonly units: { readonly standing: number; readonly entered: number; readonly shipped: number };
  readonly verdict: 'agrees' | 'does not agree';
  readonly sentence: string;
  readonly uses: readonly Use[];
  /** The strongest evidence first. */
  readonly causes: readonly Cause[];
  readonly cause: string;
  readonly next: string;
  readonly measures: readonly Compared[];
  readonly waiting: readonly {
    readonly step: string;
    readonly real: number | null;
    readonly simulated: number | null;
  }[];
  readonly byDay: readonly DayRow[];
  readonly wipByDay: readonly WipByDay[];
  /** What could not be told, or not be put into the model. */
  readonly notes: readonly string[];
}
