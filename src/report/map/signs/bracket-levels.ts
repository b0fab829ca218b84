import { type Bracket, HOOK_ROOM } from './brackets.js';

/**
 * Distance between brackets down a page, also over one that turns back there, and of the outermost from the
 * edge; CSS pixels.
 */
const PITCH = 13,
  HOOK_PITCH = HOOK_ROOM + 8.5,
  EDGE = 10;

const hasHook = ({ back }: Pick<Bracket, 'back'>): boolean => back !== undefined;

/** The longest lie outermost; of equals those with a hook, which reaches over the next. */
export function levelled(all: readonly Omit<Bracket, 'level'>[]): Bracket[] {
  const length = ({ fromCell, toCell }: Omit<Bracket, 'level'>): number => toCell - fromCell,
    laid: Bracket[] = [];
  const hook = (each: Omit<Bracket, 'level'>): number => Number(hasHook(each));
  for (const each of [...all].sort((a, b) => length(a) - length(b) || hook(a) - hook(b))) {
    const isTaken = (level: number): boolean =>
      laid.some(
        (other) => other.level === level && other.fromCell <= each.toCell && other.toCell >= each.fromCell,
      );
    let level = 0;
    while (isTaken(level)) level++;
    laid.push({ ...each, level });
  }
  return laid;
}

/**
 * How far from the edge of a column brackets of each level stand, and what all of them take; CSS pixels.
 * `here`: those that the column shows, as far as its last cell `high`.
 */
export function levelsBeside(
  here: readonly Bracket[],
  high: number,
): { readonly at: ReadonlyMap<number, number>; readonly room: number } {
  const levels = [...new Set(here.map(({ level }) => level))].sort((a, b) => b - a),
    of = (level: number | undefined): Bracket[] => here.filter((each) => each.level === level),
    // A hook reaches out over its end to where the next bracket has its ticks and its name.
    isUnder = (level: number, outer: number | undefined): boolean =>
      of(level).some(
        (each) =>
          hasHook(each) &&
          each.toCell <= high &&
          of(outer).some(({ fromCell, toCell }) => fromCell <= each.toCell + 1 && toCell >= each.toCell),
      ),
    at = new Map<number, number>();
  let next = EDGE;
  levels.forEach((level, i) => {
    if (i > 0) next += isUnder(level, levels[i - 1]) ? HOOK_PITCH : PITCH;
    at.set(level, next);
  });
  return { at, room: levels.length === 0 ? 0 : next + PITCH };
}
