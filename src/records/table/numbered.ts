import { Oddities } from '../oddity.js';
import type { StepTimes, TimesRead } from './clocked.js';
import type { LeftOut, TableLine } from './table.js';

/** Times of one step, each with the how manieth unit it was. */
export interface NumberedTimes extends StepTimes {
  /** From 1, one for each time. */
  readonly numbers: readonly number[];
}

export interface NumberedRead extends TimesRead {
  readonly steps: readonly NumberedTimes[];
}

/** `17`, `RT-017`, `#17`: the digits at the end, from 1. */
function numberOf(unit: string): number | undefined {
  const number = Number(/(\d{1,9})$/.exec(unit)?.[1] ?? NaN);
  return number >= 1 ? number : undefined;
}

/**
 * Times with the numbers of their units; a row without one tells nothing of learning and is left out.
 * @param table of which the times were read
 */
export function numberedTimes(read: TimesRead, table: readonly TableLine[]): NumberedRead {
  const rows = new Map(table.map((row) => [row.line, row])),
    oddities = new Oddities(),
    leftOut: LeftOut[] = [];
  const steps = read.steps.flatMap((times): NumberedTimes[] => {
    const kept = times.units.flatMap((unit, i) => (numberOf(unit) === undefined ? [] : [i])),
      of = <Each>(list: readonly Each[]): Each[] => kept.flatMap((i) => list.slice(i, i + 1));
    times.units.forEach((unit, i) => {
      const line = times.lines[i] ?? 0;
      if (numberOf(unit) !== undefined) return;
      const told = 'Expected a build number from 1, such as 17 or RT-017. Left out.';
      oddities.add('no build number', 'left out', line, unit, told);
      leftOut.push({ line, cells: rows.get(line)?.cells ?? [], kind: 'no build number' });
    });
    return kept.length === 0
      ? []
      : [
          {
            step: times.step,
            minutes: of(times.minutes),
            lines: of(times.lines),
            at: of(times.at),
            units: of(times.units),
            by: Object.fromEntries(Object.entries(times.by).map(([option, list]) => [option, of(list)])),
            numbers: of(times.units).flatMap((unit) => numberOf(unit) ?? []),
          },
        ];
  });
  return {
    ...read,
    steps,
    leftOut: [...read.leftOut, ...leftOut].sort((a, b) => a.line - b.line),
    oddities: [...read.oddities, ...oddities.list()],
  };
}
