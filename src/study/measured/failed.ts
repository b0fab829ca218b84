import { FAILED } from '../../records/log/of-run.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { LEVEL } from '../asked.js';
import { fitChance } from '../chances/chance.js';
import type { Source } from '../chances/measured.js';
import { writtenChance } from '../chances/written.js';
import type { DefectCounts } from './counts.js';
import { entryOf } from './entry.js';
import { pathOf, stepPlaces } from './places.js';
import type { ChanceResult } from './results.js';

/** The records, and the days between which something was counted. */
export const sourceOf = (file: string, { from, to }: DefectCounts): Source => ({
  file,
  ...(from === null || to === null ? {} : { from, to }),
});

/** How often a test is not passed: each time that a unit comes to it counts. */
export function testResult(counts: DefectCounts, scenario: Scenario | undefined, file: string): ChanceResult {
  const looks = counts.looks.map(({ step, rows }) => ({ step, found: fitChance(rows, LEVEL), finds: null })),
    step = looks[0]?.step ?? '',
    place = scenario === undefined ? undefined : stepPlaces(scenario).get(step),
    isTest = scenario === undefined || place?.step.fails !== undefined,
    path = `${place?.path ?? pathOf(step)}.fails.chance`;
  return {
    ...{
      defect: FAILED,
      madeAt: null,
      looks,
      found: looks[0]?.found ?? null,
      made: null,
      from: counts.from,
      to: counts.to,
    },
    told: looks.flatMap(({ found }) => found.told),
    entries: isTest
      ? looks.map(({ found }) => entryOf(path, writtenChance(found, sourceOf(file, counts))))
      : [],
    notWritten: isTest
      ? []
      : [`${step} is no test in the scenario (it has no \`fails\`); nothing is written.`],
  };
}
