/** What was asked on the command line, checked as far as it can be without reading a file. */
export type Request = TextRequest | CheckRequest | SimulateRequest | BuffersRequest | SchemaRequest;

/** Help or version, to be printed as it is. */
export interface TextRequest { readonly command: 'text'; readonly text: string }
export interface CheckRequest { readonly command: 'check'; readonly file: string; readonly json: boolean }
/** What every study that runs replications is asked. */
export interface RunRequest {
  readonly file: string;
  readonly seed: string;
  readonly workers: number;
  /** Folder of the report; undefined: none is written. */
  readonly out: string | undefined;
  readonly replace: boolean;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly findingOk: boolean;
}
export interface SimulateRequest extends RunRequest {
  readonly command: 'simulate';
  readonly replications: number;
  /** Build number of the unit whose way is told; undefined: one with the median lead time. */
  readonly journey: string | undefined;
}
export interface BuffersRequest extends RunRequest {
  readonly command: 'buffers';
  readonly goal: { readonly kind: 'budget'; readonly places: number } | { readonly kind: 'target'; readonly rate: number };
  /** Stations and lanes; none: all limited ones. */
  readonly at: readonly string[];
  readonly from: 'least' | 'present';
  readonly replications: number;
  readonly zone: number;
}
export interface SchemaRequest { readonly command: 'schema'; readonly out: string | undefined }
