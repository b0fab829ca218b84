import type { Observation } from '../../measure/observe.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { capital, count, exact } from '../format.js';
import { defined } from '../lists.js';
import { type Changed, compiled } from '../reliefs/changes.js';
import type { Replicator, Variant } from '../run/replicator.js';
import { remediesFor } from './remedies.js';
import type { HelpResult, StandstillTold, TriedHelp } from './results.js';

/**
 * Each change is run in so many of the replications that stood still. So many of those with which all of
 * these end are run in so many more: others that stood still, and the first of all, which another standstill
 * may befall.
 */
const FIRST = 3,
  MOST_WINNERS = 3,
  MOST_STOOD = 10,
  MOST_OF_ALL = 20;

/** How often one more of a thing is added where one alone ends it nowhere. */
const TIMES = 4;

/** @param replications all there are of the build */
export async function helpFor(
  base: Changed,
  stood: Pick<StandstillTold, 'held' | 'stood'>,
  replications: number,
  replicator: Replicator,
): Promise<HelpResult> {
  const first = stood.stood.slice(0, FIRST),
    changes: Trial[] = [],
    ends: number[] = [];
  const enough = (): Trial[] => changes.filter((_, i) => ends[i] === first.length).slice(0, MOST_WINNERS);
  for (const times of [1, TIMES]) {
    if (enough().length > 0) break;
    const remedies = remediesFor(base.scenario, stood, times).filter(
        ({ text }) => !changes.some(({ of }) => of === text),
      ),
      made = await compiled(
        base,
        remedies.map(({ text, change }) => ({
          of: text,
          what: text,
          scenario: (): Scenario => change(base.scenario),
        })),
      );
    changes.push(...made.changes);
    ends.push(...(await endsIn(made.changes, first, replicator)));
  }
  const winners = enough(),
    all = new Set([
      ...stood.stood.slice(0, MOST_STOOD),
      ...Array.from({ length: Math.min(replications, MOST_OF_ALL) }, (_, i) => i + 1),
    ]),
    rest = [...all].filter((each) => !first.includes(each)).sort((a, b) => a - b),
    more = await endsIn(winners, rest, replicator);
  const tried = changes.map(({ of: what }, i): TriedHelp => {
    const winner = winners.findIndex((each) => each.of === what);
    return {
      what,
      ends: defined(ends[i]) + (more[winner] ?? 0),
      of: first.length + (winner < 0 ? 0 : rest.length),
    };
  });
  return { tried, builds: all.size, sentence: helpSentence(tried, all.size) };
}

type Trial = Changed & { readonly of: string };

/** By change: how many of the replications do not stand still. */
async function endsIn(
  changes: readonly Trial[],
  replications: readonly number[],
  replicator: Replicator,
): Promise<number[]> {
  const ends = changes.map(() => 0),
    variants = changes.map(
      ({ key, model }): Variant<boolean> => ({ key: `${key} stands`, model, read: goesToTheEnd }),
    );
  for (const replication of replications)
    await replicator.each(variants, replication, replication, 1, (isOver, i) => {
      if (isOver) ends[i] = defined(ends[i]) + 1;
    });
  return ends;
}

const goesToTheEnd = ({ outcome }: Observation): boolean => outcome !== 'gridlock';

/**
 * `With one more of dolly all 20 builds go on to their end; with one place more at weld 18 of 20 do; none of
 * the 4 others tried helps`.
 * @param builds those in which a change was run that ended the first ones
 */
export function helpSentence(tried: readonly TriedHelp[], builds: number): string {
  const whole = tried.filter(({ ends, of }) => ends === of && of === builds),
    best = tried
      .filter((each) => each.ends > 0 && !whole.includes(each))
      .sort((a, b) => share(b) - share(a))
      .at(0),
    others = tried.filter((each) => each !== best && !whole.includes(each)),
    helps = others.some(({ ends }) => ends > 0);
  if (tried.length === 0) return 'Nothing was found that could be tried against it';
  if (whole.length === 0 && best === undefined)
    return tried.length === 1
      ? `The one change that was tried does not end it: ${defined(tried[0]).what}`
      : `None of the ${tried.length} changes that were tried ends it`;
  const parts = [
    ...(whole.length === 0
      ? []
      : [
          `with ${whole.map(({ what }) => what).join(', or with ')}${whole.length > 1 ? ',' : ''} ` +
            (builds === 1
              ? 'the build goes on to its end'
              : `all ${count(builds, 'build')} go on to their end`),
        ]),
    ...(best === undefined
      ? []
      : [
          `with ${best.what} ${exact(best.ends)} of ${exact(best.of)} ` +
            (whole.length > 0 ? 'do' : 'builds go on to their end'),
        ]),
    ...(others.length === 0 ? [] : [othersText(others.length, helps)]),
  ];
  return capital(parts.join('; '));
}

const share = ({ ends, of }: TriedHelp): number => ends / of;

const othersText = (count: number, helps: boolean): string =>
  count === 1
    ? `the other one tried ${helps ? 'helps less' : 'does not help'}`
    : helps
      ? `the ${exact(count)} others tried help less or not`
      : `none of the ${exact(count)} others tried helps`;
