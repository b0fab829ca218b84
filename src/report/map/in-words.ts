import { calledThing } from '../../study/constraint/sentence.js';
import { capital } from '../../study/format.js';
import { aboutCompanion } from './signs/companions.js';
import { isStop } from './strip.js';
import { byText, inHundred, laneTexts, rhythm, stepText } from './words.js';
import type { Section, World } from './world.js';

/** The map as sentences: the unit's way plant after plant, then the side lines. */
export function inWords({ scenario, route, strip, seen }: World, sections: readonly Section[]): string {
  const way = sections.map((section) => {
    if (section.kind === 'lane') {
      const trip = strip.cells[section.cell]?.what,
        lane = trip?.kind === 'trip' ? scenario.lanes[trip.lane] : undefined;
      return trip?.kind === 'trip' && lane !== undefined
        ? `Then by ${trip.lane}: ${laneTexts(lane, trip).join('; ')}.`
        : '';
    }
    const stops = section.cells.flatMap((cell) => {
      const here = strip.cells[cell];
      return here?.side === -1 && isStop(here.what)
        ? [`${here.what.station} (${here.what.steps.map(({ step }) => stepText(step)).join(', ')})`]
        : [];
    });
    return `In ${section.site}: ${stops.join('; ')}.`;
  });
  const sides = route.sides.map(
    ({ name, kind, entries, leaves, joins }) =>
      (kind === 'own' ? `Own parts ${name} come off at ${leaves?.step ?? 'no step'}` : `Feeder ${name}`) +
      ': ' +
      `${entries.map((each) => (each.kind === 'stop' ? each.station : each.lane)).join(', ')}; ` +
      `to ${joins.map(({ step }) => step).join(', ')}.`,
  );
  const backs = [route.main, ...route.sides]
    .flatMap((line) => line.backs)
    .map(({ from, to, chance, by }) => `${from} sends ${inHundred(chance)} back to ${to}${byText(by)}.`);
  const supplies = Object.entries(scenario.supplies).map(
    ([name, supply]) => `Bought in: ${name}, ${rhythm(supply)}.`,
  );
  return [
    ...way,
    ...sides,
    ...backs,
    ...supplies,
    ...route.companions.map((each) => `${aboutCompanion(each)}.`),
    ...(seen?.stops === undefined ? [] : [`${seen.stops.text}.`]),
    ...(seen?.marks ?? []).map(({ thing, text }) => `${capital(calledThing(thing))}: ${text}.`),
  ].join(' ');
}
