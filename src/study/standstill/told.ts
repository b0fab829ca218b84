import type { Standstill } from '../../flow/gridlock/stuck.js';
import type { Observation } from '../../measure/observe.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import { standstills } from '../answer/gridlock.js';
import { Deferred } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { StandstillTold } from './results.js';

interface Stood {
  readonly ends: number[];
  readonly stood: number[];
  readonly first: Standstill | null;
}

/** Null where none stood still. */
export function standstillTold(sample: Sample, clock: ProgrammeClock): Deferred<StandstillTold | null> {
  const seen = sample.fold<Stood>(
    { ends: [], stood: [], first: null },
    (known, { outcome, endedAt, replication, standstill }: Observation) => {
      if (outcome !== 'gridlock') return known;
      known.ends.push(endedAt);
      known.stood.push(replication);
      return { ...known, first: known.first ?? standstill };
    },
  );
  return new Deferred(() => {
    const { ends, stood, first } = seen.value,
      counted = standstills(ends, sample.replications, clock);
    return counted === null || first === null ? null : { ...counted, ...first, stood, help: null };
  });
}
