import { count, number } from '../study/format.js';
import { countedText } from '../study/loads/words.js';
import type { ReliefsResults } from '../study/reliefs/results.js';

/** Where the throughput of a study of reliefs is counted. */
export function countedIn({ counted: { over, from, to, counting } }: ReliefsResults): string {
  return over === 'whole run' ? 'over the whole run' : `${from ?? ''} to ${to ?? ''}${countedText(counting)}`;
}

/** How many were compared to the end. */
export const comparedToTheEnd = (all: readonly { readonly out: unknown }[]): number =>
  all.filter(({ out }) => out === null).length;

/** What the screen spared. */
export function savedText({
  runs: { run, withoutScreen },
  keep,
  zone,
  level,
  reliefs,
  replications,
}: ReliefsResults): string {
  const outs = (why: string): number => reliefs.filter(({ out }) => out === why).length;
  return (
    `${count(run, 'replication')} run instead of ${withoutScreen} ` +
    `(${number(100 * (1 - run / withoutScreen))} % saved): of ${count(reliefs.length, 'relief')} ` +
    `${outs('no effect')} showed no effect early, ${outs('behind')} were clearly behind the best ${keep} ` +
    `(indifference zone ${number(zone)} a day, ${number(level * 100)} %), ` +
    `${comparedToTheEnd(reliefs)} were given all ${replications}`
  );
}
