import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { toldOfLog } from '../../records/log-told.js';
import { isoDate } from '../../scenario/calendar/date.js';
import { LEVEL } from '../asked.js';
import { count } from '../format.js';
import { headOf } from '../head.js';
import { mean } from '../statistics/sums.js';
import { causesOf, comparedOf } from './cause.js';
import type { DayRow, ValidateResults } from './results.js';
import { isDone } from './seen/stays.js';
import type { SideBySide, ValidateOptions } from './types.js';
import { causeOf, nextOf, sentenceOf, usesOf } from './verdict.js';
import { wipByDay } from './wip-by-day.js';

/** The answer of `validate`. */
export function summaryOf(options: ValidateOptions, found: SideBySide): ValidateResults {
  const { scenario, file, seed, level = LEVEL, log, replications } = options,
    { real, period, read, judged, most, gridlocks } = found,
    { line } = real.watch,
    causes = causesOf(judged, most),
    uses = usesOf(judged),
    agrees = judged.every((each) => each.agrees);
  return {
    ...headOf('validate', { scenario, file, seed, level }),
    replications,
    log: { file: log.file, ...toldOfLog(read) },
    period: {
      from: isoDate(period.fromDay),
      to: isoDate(period.toDay),
      days: period.toDay - period.fromDay,
    },
    units: {
      standing: real.opening?.placed.length ?? 0,
      entered: real.entries.length,
      shipped: line.shipped,
    },
    verdict: agrees ? 'agrees' : 'does not agree',
    sentence: sentenceOf(uses, causes),
    uses,
    // Its evidence is among the measures.
    causes: causes.map((each) => ({ ...each, judged: undefined })),
    cause: causeOf(uses, causes),
    next: nextOf(uses, causes),
    measures: judged.map(comparedOf),
    waiting: waitingOf(found),
    byDay: byDay(found),
    wipByDay: wipByDay(found),
    notes: [
      ...(real.opening?.notes ?? []),
      ...untold(found),
      ...(found.kinds.kinds.has('find') ? [] : ['The log tells of no finds: nothing is said of quality.']),
      ...(gridlocks > 0
        ? [`${count(gridlocks, 'simulated build')} of ${replications} came to a standstill.`]
        : []),
      'Agreement is no proof: a gap that stays inside the bands is not seen.',
      'Stops are not in a floor log: they lie in the working minutes of the steps that they hold up.',
    ],
  };
}

/** Steps that the log never tells of, so that nothing is compared there. */
function untold({ real, kinds }: SideBySide): string[] {
  const { model } = real.frame,
    last = model.routes.firstStep[model.routes.count] ?? 0,
    names = model.steps.names
      .slice(0, last)
      .filter((name, step) => isDone(model, step) && !kinds.steps.has(name)),
    some = names.slice(0, SHOWN).join(', ') + (names.length > SHOWN ? ', ..' : '');
  return names.length === 0
    ? []
    : [`The log does not tell of ${count(names.length, 'step')}, and nothing is said of them: ${some}.`];
}
const SHOWN = 5;

/** Mean working minutes between arrival and start, where both logs have them. */
const waitingOf = ({ real, simulated }: SideBySide): ValidateResults['waiting'] =>
  real.frame.model.steps.names.flatMap((step, id) => {
    const own = real.watch.stays.waiting[id],
      others = simulated.flatMap(({ watch }) => {
        const its = watch.stays.waiting[id];
        return its === undefined || its.n === 0 ? [] : [its.mean];
      });
    return own === undefined || (own.n === 0 && others.length === 0)
      ? []
      : [
          {
            step,
            real: own.n === 0 ? null : own.mean,
            simulated: others.length === 0 ? null : mean(others),
          },
        ];
  });

/** Units shipped since the start, at the end of each day: the real line in the band of the simulated ones. */
function byDay({ real, simulated, period }: SideBySide): DayRow[] {
  const days = Math.round((period.to - period.from) / MINUTES_PER_DAY),
    lines = [real.watch, ...simulated.map(({ watch }) => watch)].map(({ line }) => {
      let sum = 0;
      return Array.from(line.shippedOn, (units) => (sum += units));
    });
  return Array.from({ length: days }, (_, day) => {
    const [own = 0, ...others] = lines.map((line) => line[Math.min(day, line.length - 1)] ?? 0);
    others.sort((a, b) => a - b);
    return {
      day: day + 1,
      date: isoDate(period.fromDay + day),
      real: own,
      low: others[0] ?? 0,
      middle: others[Math.floor(others.length / 2)] ?? 0,
      high: others.at(-1) ?? 0,
    };
  });
}
