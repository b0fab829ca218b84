import { count, exact, intervalName, number } from '../study/format.js';
import { countedText } from '../study/loads/words.js';
import { each } from '../study/planners-unit.js';
import type { ReliefsResults } from '../study/reliefs/results.js';

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

/** What the screen spared. */
export function savedText({
  runs: { run, withoutScreen },
  keep,
  zone,
  level,
  reliefs,
  replications,
  rateUnit,
}: ReliefsResults): string {
  const outs = (why: string): number => reliefs.filter(({ out }) => out === why).length;
  return (
    `${count(run, 'replication')} run instead of ${exact(withoutScreen)} ` +
    `(${number(100 * (1 - run / withoutScreen))} % saved): of ${count(reliefs.length, 'relief')} ` +
    `${outs('no effect')} showed no effect early, ${outs('behind')} were clearly behind the best ${keep} ` +
    `(indifference zone ${number(zone)} ${each(rateUnit)}, ${number(level * 100)} %), ` +
    `${comparedToTheEnd(reliefs)} were given all ${exact(replications)}`
  );
}
