import { sameZone, USUAL_ZONE, ZONE_MEASURES, type Zones } from '../../study/compare/zones.js';
import { UsageError } from '../usage-error.js';
import { type Option, repeatable } from './option.js';

const FORM = /^(?:([a-z-]+) +)?(\d{1,2}(?:\.\d{1,6})?) ?%$/,
  HINT = 'for example --zone "2 %", or --zone "lead-time 5 %" for one measure';

/**
 * Differences that do not matter, as shares of the base's mean: for all measures, or for one by its name, in
 * whatever order.
 */
export const ZONES: Option<Zones> = {
  ...repeatable(
    'difference that does not matter, as a share of the base, repeatable; "lead-time 5 %" for one of ' +
      ZONE_MEASURES.join(', '),
  ),
  byDefault: `${100 * USUAL_ZONE} %`,
  read: (texts, option) => {
    const given = texts.map((text) => zoneIn(text, option)),
      all = given.filter(({ measure }) => measure === undefined).at(-1)?.share ?? USUAL_ZONE;
    return given.reduce<Zones>(
      (zones, { measure, share }) => (measure === undefined ? zones : { ...zones, [measure]: share }),
      sameZone(all),
    );
  },
};

function zoneIn(text: string, option: string) {
  const [whole, name, percent] = FORM.exec(text) ?? [],
    measure = ZONE_MEASURES.find((each) => each === name);
  if (whole === undefined || percent === undefined)
    throw new UsageError(
      `${option}: expected per cent from 0 to below 100, a measure before it or none, ` +
        `got ${JSON.stringify(text)}`,
      HINT,
    );
  if (name !== undefined && measure === undefined)
    throw new UsageError(
      `${option}: expected one of ${ZONE_MEASURES.join(', ')} before the per cent, ` +
        `got ${JSON.stringify(name)}`,
      HINT,
    );
  return { measure, share: parseFloat(percent) / 100 };
}
