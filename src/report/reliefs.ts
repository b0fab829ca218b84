import { count, exact, intervalName, number } from '../study/format.js';
import { countedText } from '../study/loads/words.js';
import { each } from '../study/planners-unit.js';
import type { ReliefsResults } from '../study/reliefs/results.js';
import { triedIn } from '../study/reliefs/sentence.js';
import { sumOf } from '../study/statistics/sums.js';

/** Where the throughput of a study of reliefs is counted. */
export function countedIn({ counted: { over, from, to, counting } }: ReliefsResults): string {
  return over === 'whole run' ? 'over the whole run' : `${from ?? ''} to ${to ?? ''}${countedText(counting)}`;
}

/** Levels of the intervals of gains, and what for. */
export function levelsText({ reliefs, eachLevel, replications, level }: ReliefsResults): string {
  const fresh = reliefs.filter(({ isFresh }) => isFresh).length,
    ofFresh =
      fresh === 0
        ? ''
        : `; of the first ${fresh}, from ${exact(replications)} fresh replications that had no part in ` +
          `choosing them, ${intervalName(eachLevel.final)}`;
  return (
    `${intervalName(eachLevel.reliefs)}${ofFresh}; so all that the answer says holds together with ` +
    `${number(level * 100)} %`
  );
}

/** How many were compared to the end. */
const comparedToTheEnd = (all: readonly { readonly out: unknown }[]): number =>
  all.filter(({ out }) => out === null).length;

/** Which guesses and estimates were not varied; null: all that can be were. */
export function leftText({ assumptions, values: { left } }: ReliefsResults): string | null {
  if (left.length === 0) return null;
  const all = assumptions.length + left.length;
  return (
    `${assumptions.length} of ${all} guesses and estimates were varied: those given by themselves ` +
    'first, then those that bear on what is loaded most (a hint by arithmetic and by the first runs, ' +
    'not a result); ' +
    `--values ${all} varies all`
  );
}

/** What was spared, and why. */
export function savedText(results: ReliefsResults): string {
  const { runs, keep, zone, level, reliefs, groups, replications, rateUnit } = results,
    outs = (why: string): number => reliefs.filter(({ out }) => out === why).length,
    inGroups = sumOf(groups, (group) => group.reliefs.length);
  return [
    `${count(runs.run, 'replication')} run instead of ${exact(runs.withoutScreen)} ` +
      `(${number(100 * (1 - runs.run / runs.withoutScreen))} % saved): of ` +
      `${count(triedIn(results), 'relief')} ${outs('not felt')} were never felt, as nobody ever wanted ` +
      'what there would be more of',
    ...(inGroups === 0
      ? []
      : [
          `${inGroups} in ${count(groups.length, 'group')} gain too little even all together ` +
            `(${harmText(results.harm)})`,
        ]),
    `${outs('no effect')} showed no effect early`,
    `${outs('behind')} were clearly behind the best ${keep} (indifference zone ${number(zone)} ` +
      `${each(rateUnit)}, ${number(level * 100)} %)`,
    `${comparedToTheEnd(reliefs)} were given all ${exact(replications)}`,
  ].join(', ');
}

/** Whether what giving up a group rests on was seen to fail. */
function harmText({ tested, found }: ReliefsResults['harm']): string {
  const rests = 'if none takes away what others gain';
  if (tested === 0) return rests;
  return found.length === 0
    ? `${rests}; ${tested} halves of groups set against the whole do not say otherwise`
    : `${rests}; that fails in ${found.length} of ${tested} halves of groups set against the whole`;
}
