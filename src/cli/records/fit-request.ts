import type { OddityKind } from '../../records/oddity.js';
import { UsageError } from '../usage-error.js';

/** What `fit` is asked. */
export interface FitRequest {
  readonly table: string;
  /** The scenario, if there is one. */
  readonly scenario: readonly string[];
  readonly of: 'times' | 'chances' | 'learning' | 'stops';
  readonly step: string | undefined;
  readonly minutes: string | undefined;
  readonly date: string | undefined;
  readonly unit: string | undefined;
  readonly by: readonly string[];
  readonly defect: string | undefined;
  readonly found: string | undefined;
  readonly units: string | undefined;
  readonly station: string | undefined;
  readonly began: string | undefined;
  readonly ended: string | undefined;
  readonly up: string | undefined;
  readonly down: string | undefined;
  readonly inUse: number | undefined;
  readonly names: string | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly out: string | undefined;
  readonly replace: boolean;
  readonly quiet: boolean;
  readonly json: boolean;
  readonly includeFrom: readonly string[];
  readonly seed: string;
}

/** Options that name a column of a table; a file of which one is named is no floor log. */
export const COLUMNS = [
  ...(['step', 'minutes', 'date', 'unit', 'defect', 'found', 'units'] as const),
  ...(['station', 'began', 'ended', 'up', 'down'] as const),
];

/** Options that say something of one kind only. */
const ONLY = {
  minutes: ['times', 'learning'],
  defect: ['chances'],
  found: ['chances'],
  units: ['chances'],
  station: ['stops'],
  began: ['stops'],
  ended: ['stops'],
  up: ['stops'],
  down: ['stops'],
  inUse: ['stops'],
} as const satisfies Partial<Record<keyof FitRequest, readonly FitRequest['of'][]>>;

/** Throws a UsageError for what cannot be asked together. */
export function checkedFit(request: FitRequest): FitRequest {
  const [, second] = request.scenario;
  if (second !== undefined)
    throw new UsageError(`expected one scenario FILE, got ${second} besides`, 'give one file');
  for (const [key, kinds] of Object.entries(ONLY)) {
    const of: readonly string[] = kinds,
      option = key === 'inUse' ? 'in-use' : key;
    if (request[key as keyof typeof ONLY] !== undefined && !of.includes(request.of))
      throw new UsageError(
        `--${option}: expected it only with --of ${of.join(' or --of ')}, got --of ${request.of}`,
        `leave --${option} out, or say --of ${of[0] ?? ''}`,
      );
  }
  if (request.from !== undefined && request.to !== undefined && request.to < request.from)
    throw new UsageError(
      `--to: expected a day that is not before ${request.from}, got ${request.to}`,
      'give the first day with --from, the last with --to',
    );
  return request;
}

/** No row is left: says what is wrong with them. */
export function expectRows(
  path: string,
  isEmpty: boolean,
  rows: number,
  oddities: readonly {
    readonly kind: OddityKind;
    readonly told: string;
    readonly lines: readonly number[];
  }[],
  otherwise: string,
): void {
  if (isEmpty)
    throw new UsageError(
      `${path}: expected at least one row that can be used, got none of ${rows}`,
      oddities[0]?.told ?? otherwise,
      oddities.map(({ told, lines }) => `${path}: line ${lines.join(', ')}: ${told}`),
    );
}

/** Days are asked of a table that is taken as a whole. */
export const onlyOfLogs = (): UsageError =>
  new UsageError(
    '--from and --to: expected a floor log or a stop log, got a table of another kind',
    'leave them out, and rows of other days out of the table',
  );
