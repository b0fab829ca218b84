import type { Finding } from './problem.js';
import type { RatePhase, Scenario } from './scenario.js';

/** Dates of the programme in order, and a release that reaches the end of the run. ISO dates compare as texts. */
export function programmeFindings({ programme }: Scenario): Finding[] {
  const { start, until, release, lengthMin } = programme;
  const found: Finding[] = [];
  if (until !== undefined && until <= start)
    found.push({
      path: ['programme', 'until'],
      wanted: `a day after the start, ${start}`,
      seen: `"${until}"`,
    });
  if (release.kind !== 'rate') return found;

  const { phases } = release,
    last = phases.at(-1);
  // Each unit has a day of release of its own, or stands on the floor.
  if (last === undefined) return found;
  phases.forEach(({ from }, i) => {
    const path = ['programme', 'rate', i, 'from'];
    const before = phases[i - 1]?.from;
    if (from === '') found.push({ path, wanted: 'missing; should be the first day of this rate' });
    else if (from < start)
      found.push({
        path,
        wanted: `a day not before the start of the programme, ${start}`,
        seen: `"${from}"`,
      });
    else if (before !== undefined && before !== '' && from <= before)
      found.push({ path, wanted: `a day after that of the rate before, ${before}`, seen: `"${from}"` });
  });
  const rests = ({ perDay, perWeek }: RatePhase): boolean => (perDay ?? perWeek) === 0;
  if (phases.every(rests) || (rests(last) && until === undefined && lengthMin === undefined)) {
    found.push({
      path: ['programme', 'rate'],
      wanted: 'a rate above 0 per day at last, so that the run ends',
      seen: '0',
    });
  }
  return found;
}
