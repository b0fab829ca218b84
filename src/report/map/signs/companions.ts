import type { Companion } from '../../../study/route/types.js';
import type { Strip } from '../strip.js';
import { duration } from '../words.js';
import { levelled } from './bracket-levels.js';
import type { Bracket } from './brackets.js';

/** What can be drawn of the companions of units: all whose ends stand on a line. */
export function bracketsOf(companions: readonly Companion[], { cells }: Strip): Bracket[] {
  const cellOf = (step: string): number =>
      cells.findIndex(
        ({ what }) => what.kind === 'stop' && what.steps.some((each) => each.step.name === step),
      ),
    cellAt = (station = ''): number =>
      cells.findIndex(({ what, side }) => side < 0 && what.kind === 'stop' && what.station === station);
  return levelled(
    companions
      .map((each) => {
        const isLine = each.kind === 'pulse line',
          fromCell = isLine ? cellAt(each.stations[0]) : cellOf(each.from),
          toCell = isLine ? cellAt(each.stations.at(-1)) : cellOf(each.to);
        return {
          kind: each.kind,
          name: each.name,
          words: wordsOf(each),
          about: aboutCompanion(each),
          back: each.kind === 'carrier' ? backText(each.returnMin) : undefined,
          fromCell,
          toCell,
          side: cells[fromCell]?.side ?? -1,
        };
      })
      .filter(({ fromCell, toCell }) => fromCell >= 0 && toCell >= fromCell),
  );
}

function wordsOf(each: Companion): string {
  switch (each.kind) {
    case 'carrier':
      return `${each.count} ${each.name}, one a unit`;
    case 'team':
      return `${each.name}: ${each.people} ${each.crew}, the same all along`;
    case 'pulse line':
      return `${each.name}: all move on together, every ${duration(each.taktMin)}`;
  }
}

/** `64 body dollies, one a unit: from build body to incoming check, back in 4 h`. */
export function aboutCompanion(each: Companion): string {
  const words = wordsOf(each);
  if (each.kind === 'pulse line') return `${words}: ${each.stations.join(', ')}`;
  return (
    `${words}: from ${each.from} to ${each.to}` +
    (each.kind === 'carrier' ? `, ${backText(each.returnMin)}` : '')
  );
}

const backText = (minutes: number): string => (minutes > 0 ? `back in ${duration(minutes)}` : 'back at once');
