import type { Scenario } from '../../scenario/types/scenario.js';
import type { RouteMap } from '../../study/route/types.js';
import type { Seen } from './seen.js';
import type { Bracket } from './signs/brackets.js';
import type { Cell, Strip } from './strip.js';

/** All that is drawn from. */
export interface World {
  readonly scenario: Scenario;
  readonly route: RouteMap;
  readonly strip: Strip;
  readonly brackets: readonly Bracket[];
  /** What a run has seen; undefined where nothing was run. */
  readonly seen: Seen | undefined;
  readonly form: Form;
}

/** How large it is drawn; all in CSS pixels. */
export interface Form {
  readonly width: number;
  /** Columns in which the strip runs down; 0: it runs across. */
  readonly columns: number;
  readonly margin: number;
  readonly nameSize: number;
  readonly smallSize: number;
  /** Of a page that it fills, if it is not longer. */
  readonly pageHeight?: number;
  /** Texts stand closer, for paper. */
  readonly isDense: boolean;
}

/** A stretch of the unit's way in one plant, or one of its lanes. */
export type Section =
  | {
      readonly kind: 'plant';
      readonly site: string;
      readonly isAgain: boolean;
      readonly cells: readonly number[];
    }
  | { readonly kind: 'lane'; readonly cell: number };

/** The way cut at its lanes. Side lines stand with the stops that they join. */
export function sectionsOf({ cells }: Strip): Section[] {
  const found: Section[] = [],
    sites = new Set<string>();
  let open: number[] = [];
  const close = (): void => {
    const stop = open.map((cell) => cells[cell]).find((cell) => cell?.side === -1)?.what;
    if (open.length > 0) {
      const site = stop?.kind === 'stop' ? stop.site : '';
      found.push({ kind: 'plant', site, isAgain: sites.has(site), cells: open });
      sites.add(site);
    }
    open = [];
  };
  cells.forEach(({ side, what }: Cell, cell) => {
    if (side >= 0 || what.kind === 'stop') {
      open.push(cell);
      return;
    }
    close();
    found.push({ kind: 'lane', cell });
  });
  close();
  return found;
}
