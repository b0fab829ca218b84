import type { Shard } from '../../study/run/fixed-design.js';
import type { PrecisionAsked } from '../../study/answer/precision.js';

/** What was asked on the command line, checked as far as it can be without reading a file. */
export type Request =
  | TextRequest
  | CheckRequest
  | SimulateRequest
  | CompareRequest
  | RateRequest
  | ReliefsRequest
  | BuffersRequest
  | MergeRequest
  | SchemaRequest;

/** Help or version, to be printed as it is. */
export interface TextRequest {
  readonly command: 'text';
  readonly text: string;
}
export interface CheckRequest {
  readonly command: 'check';
  readonly file: string;
  readonly json: boolean;
}
/** What is to become of an answer. */
export interface AnswerRequest {
  /** Folder of the report; undefined: none is written. */
  readonly out: string | undefined;
  readonly replace: boolean;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly findingOk: boolean;
}
/** What every study that runs replications is asked. */
export interface RunRequest extends AnswerRequest {
  readonly file: string;
  readonly seed: string;
  readonly workers: number;
}
export interface SimulateRequest extends RunRequest {
  readonly command: 'simulate';
  readonly replications: number;
  /** Undefined: there are as many replications as asked. */
  readonly precision: PrecisionAsked | undefined;
  /** Build number of the unit whose way is told; undefined: one with the median lead time. */
  readonly journey: string | undefined;
  /** The part that is run, for `merge`; undefined: all of it. */
  readonly shard: Shard | undefined;
}
export interface MergeRequest extends AnswerRequest {
  readonly command: 'merge';
  /** Of finished shards, at least one. */
  readonly folders: readonly string[];
  readonly journey: string | undefined;
}
export interface RateRequest extends RunRequest {
  readonly command: 'rate';
  /** Rates are units a working day. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly replications: number;
  readonly weeks: number;
  /** undefined: by the lead time. */
  readonly settleWeeks: number | undefined;
  /** 0..1. */
  readonly sure: number;
  /** undefined: the highest rate that holds. */
  readonly rampTo: number | undefined;
}
export interface CompareRequest extends RunRequest {
  readonly command: 'compare';
  /** Named changes of the scenario. */
  readonly whatIfsFile: string;
  readonly replications: number;
  /** As in `SimulateRequest`. */
  readonly shard: Shard | undefined;
}
export interface BuffersRequest extends RunRequest {
  readonly command: 'buffers';
  readonly goal:
    | { readonly kind: 'budget'; readonly places: number }
    | { readonly kind: 'target'; readonly rate: number };
  /** Stations and lanes; none: all limited ones. */
  readonly at: readonly string[];
  readonly from: 'least' | 'present';
  readonly replications: number;
  readonly zone: number;
}
export interface SchemaRequest {
  readonly command: 'schema';
  readonly out: string | undefined;
}
export interface ReliefsRequest extends RunRequest {
  readonly command: 'reliefs';
  /** Most that one relief is given. */
  readonly replications: number;
  /** Highest rate of the plan, units a working day; undefined: as the scenario has it. */
  readonly rate: number | undefined;
}
