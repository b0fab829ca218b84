import { FAILED } from '../../records/log/of-run.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { LEVEL } from '../asked.js';
import { fitChance } from '../chances/chance.js';
import type { Source } from '../chances/measured.js';
import { writtenChance } from '../chances/written.js';
import { foundByOption } from './by-option.js';
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
export function testResult(
  counts: DefectCounts,
  scenario: Scenario | undefined,
  file: string,
  looked: number,
): ChanceResult {
  const { from, to } = counts,
    [{ step, rows } = { step: '', rows: [] }] = counts.looks,
    place = scenario === undefined ? undefined : stepPlaces(scenario).get(step),
    isTest = scenario === undefined || place?.step.fails !== undefined,
    byOption = place?.step.fails?.chance.byOption ?? [],
    seen = foundByOption(counts.looks, byOption.length > 0 ? 1 : looked),
    found = seen?.found ?? null;
  return {
    ...{ defect: FAILED, madeAt: null, found, made: null, from, to },
    looks: found === null ? [] : [{ step, found: fitChance(rows, LEVEL), finds: null }],
    told: [...(found?.all.count === 0 ? found.told.slice(0, 1) : []), ...(seen?.told ?? [])],
    entries:
      isTest && found !== null
        ? [
            entryOf(
              `${place?.path ?? pathOf(step)}.fails.chance`,
              writtenChance(found, sourceOf(file, counts)),
            ),
          ]
        : [],
    notWritten: isTest
      ? []
      : [`${step} is no test in the scenario (it has no \`fails\`); nothing is written.`],
  };
}
