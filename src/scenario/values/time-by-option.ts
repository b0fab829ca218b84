import { z } from 'zod';
import type { Distribution } from '../../random/distribution.js';
import type { OptionTimes, TimeByOption } from '../types/steps.js';
import { FORM_KEYS, timeError } from './forms.js';
import { named } from './keys.js';
import { nearest } from './nearest.js';
import { isRawMap, once, type RawMap } from './raw.js';
import type { TimeSchema } from './time.js';

const USUAL = 'usual';

/** Whether a map is meant as times by option, so that what is wrong in it is said of these. */
const isByOption = (map: RawMap): boolean =>
  Object.entries(map).some(
    ([key, value]) =>
      key === USUAL ||
      nearest(key, [USUAL]) !== undefined ||
      (isRawMap(value) && !FORM_KEYS.includes(key) && nearest(key, FORM_KEYS) === undefined),
  );

/** One time, or one that differs by option; of one schema of times always the same. */
export const timeByOptionSchema = once(make);

function make(time: TimeSchema) {
  const byOption = z
    .object(
      { usual: time.describe('The time where no option says otherwise. Example: 25 min') },
      { error: 'times by option, such as { usual: 25 min, colour: { red: 40 min } }' },
    )
    .catchall(named(time, 'values of the option with their times, such as { red: 40 min }'))
    .transform(
      ({ usual, ...options }): OptionTimes => ({
        kind: 'by option',
        usual,
        rows: Object.entries(options).flatMap(([option, values]) =>
          Object.entries(values).map(([value, of]) => ({ option, value, time: of })),
        ),
      }),
    );
  return z
    .union([time, z.preprocess((raw) => (isRawMap(raw) && isByOption(raw) ? raw : undefined), byOption)], {
      error: (issue) =>
        isRawMap(issue.input)
          ? 'a time, such as "25 min", or one by option such as { usual: 25 min, colour: { red: 40 min } }'
          : timeError(issue),
    })
    .meta({
      id: 'time-by-option',
      description: 'A time, or one by option: { usual: 25 min, colour: { red: 40 min } }',
    });
}
/** A time with each of its times changed; itself where none was. */
export function withTimes(time: TimeByOption, change: (time: Distribution) => Distribution): TimeByOption {
  if (time.kind !== 'by option') return change(time);
  const usual = change(time.usual),
    rows = time.rows.map((row) => ({ ...row, time: change(row.time) }));
  const isSame = usual === time.usual && rows.every((row, i) => row.time === time.rows[i]?.time);
  return isSame ? time : { ...time, usual, rows };
}
