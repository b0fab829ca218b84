import type { CompareResults } from '../study/compare/results.js';
import type { ConstraintResult, LadderResult, Tried } from '../study/constraint/results.js';
import { calledThing, helps } from '../study/constraint/sentence.js';
import { capital, count, uncapital, withInterval } from '../study/format.js';
import type { Offer } from '../study/priced/offer.js';
import type { RateResults } from '../study/rate/results.js';
import type { Results } from '../study/simulate/results.js';
import { type Estimate, negated } from '../study/statistics/estimate.js';
import { type Column } from './columns.js';
import { type Cell, percent } from './sheets/cells.js';

/** What stops a build; null where that was not looked at or every replication comes to a standstill. */
export const toldConstraint = ({
  constraint,
  findings,
  replications,
}: Pick<Results, 'constraint' | 'findings' | 'replications'>): ConstraintResult | null =>
  findings.some((each) => each.kind === 'gridlock' && each.replications === replications) ? null : constraint;

/** In how many replications changes were tried: `up to 20 builds` where some ended sooner. */
export const triedIn = (
  { tried, replications }: Pick<ConstraintResult, 'tried' | 'replications'>,
  what: string,
): string => (tried.some(({ gain }) => gain.n < replications) ? 'up to ' : '') + count(replications, what);

/** A crew gets one on each of its shifts, which `one person more` alone does not say. */
export const onEveryShift = (text: string): string =>
  text.replace(/^one person more in /, 'one person more on every shift in ');

/** What a change is called wherever it is told in short: the name that the scenario gives it, if any. */
export function changeName(text: string, offer?: Offer | null): string {
  const [name, ...others] = offer?.names ?? [];
  return name === undefined || others.length > 0 ? onEveryShift(text) : `“${name}”`;
}

/** The same of every trial that a text names. */
export const eachShift = (text: string, { tried }: Pick<ConstraintResult, 'tried'>): string =>
  tried
    .filter(({ thing: { kind } }) => kind === 'crew')
    .reduce((said, { what }) => said.replaceAll(what, () => onEveryShift(what)), text);

/** A cause with the units a working day that it takes (below 0) or brings. */
export interface Rung {
  readonly cause: string;
  readonly change: Estimate;
}

/** The causes of a ladder, the largest loss first, what was gained last. */
export const rungsOf = ({ losses }: LadderResult): Rung[] =>
  [...losses]
    .sort((a, b) => b.perDay.mean - a.perDay.mean)
    .map(({ cause, perDay }) => ({ cause, change: negated(perDay) }));

/** `averages allow the station booth`. */
export const allowedText = ({ of }: LadderResult): string =>
  `averages allow ${of.kind === 'carrier' ? `the ${of.name}` : calledThing(of)}`;

/** The largest loss, `short of crew, 0.53 (95 % CI 0.51 to 0.55)`; null: nothing is lost. */
export function largestLoss({ losses }: LadderResult): string | null {
  const [first] = [...losses].sort((a, b) => b.perDay.mean - a.perDay.mean);
  return first === undefined || first.perDay.mean <= 0
    ? null
    : `${first.cause}, ${withInterval(first.perDay)}`;
}

export type TrialVerdict = 'stops it' | 'helps too' | 'too little to matter' | 'no gain seen' | 'not settled';

/** What a trial shows: surely more units, and more than do not matter. */
export function trialVerdict(tried: Tried, { culprit, zone }: ConstraintResult): TrialVerdict {
  const { low } = tried.gain;
  if (low === null) return 'not settled';
  if (culprit !== null && tried.what === culprit.what) return 'stops it';
  return helps(tried, zone) ? 'helps too' : low > 0 ? 'too little to matter' : 'no gain seen';
}

/** Units that wait for what was tried, on average; null: not among what most units wait for. */
export const waitingFor = ({ thing }: Tried, { waiting }: ConstraintResult): number | null =>
  waiting.find(({ thing: { kind, name } }) => kind === thing.kind && name === thing.name)?.units ?? null;

interface Named {
  readonly name: string;
  readonly site?: string;
}

/** The row of the same thing, seen over other weeks. */
export const sameAs = <Row extends Named>({ name, site }: Named, rows: readonly Row[]): Row | undefined =>
  rows.find((row) => row.name === name && row.site === site);

/** A figure over the weeks judged ahead of that over the whole run; without such weeks that alone. */
export function judgedFirst<Seen extends Named>(
  head: string,
  judged: readonly Seen[] | undefined,
  figure: (row: Seen) => Estimate,
  form: (estimate: Estimate) => Cell = percent,
): Column<Seen>[] {
  const whole = (row: Seen): Cell => form(figure(row));
  if (judged === undefined) return [[head, whole]];
  return [
    [
      `${head}, weeks judged`,
      (row) => {
        const same = sameAs(row, judged);
        return same === undefined ? '' : form(figure(same));
      },
    ],
    [`${head}, whole run`, whole],
  ];
}

/** `at 3.5 a day`: where a rate study tried things. */
export const triedAt = ({ constraint }: Pick<RateResults, 'constraint'>): string | null =>
  constraint === null ? null : `at ${constraint.perDay} a day`;

/** `with “second booth”`: on which what-if a comparison tried things; null: on the scenario as it is. */
export const triedWith = ({ constraint }: Pick<CompareResults, 'constraint'>): string | null =>
  constraint?.of == null ? null : `with “${constraint.of}”`;

/** On which layout a study of buffers tried things. */
export const WITH_THEM = 'with these places';

/** What stops it, at a rate where there are several: `At 3.5 a day the station booth stops it: ..`. */
export const stoppedText = ({ sentence }: ConstraintResult, at: string | null): string =>
  at === null ? sentence : `${capital(at)} ${uncapital(sentence)}`;
