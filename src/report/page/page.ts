import { Eta } from 'eta/core';
import { intervalAndCount, mean } from '../../study/format.js';
import { shown } from '../../study/shown.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { explained, type PageTable } from '../columns.js';
import { estimated, type Valued } from '../sheets/cells.js';
import { unbroken } from '../unbroken.js';
import { PAGE_TEMPLATE } from './template.js';

/** A drawn chart for the page; width and height are CSS pixels. */
export interface Picture {
  readonly name: string;
  readonly alt: string;
  readonly width: number;
  readonly height: number;
  readonly png: Buffer;
}

/** One number of the first page. */
export interface Figure {
  readonly what: string;
  readonly value: string;
  readonly interval: string;
  /** The number itself; undefined where there is none. */
  readonly cell?: Valued;
}

/** A fact of where the page comes from. */
export type Fact = readonly [what: string, value: string];

/**
 * What the page of a study shows: the answer, one to three numbers, one picture, then lists, then all
 * pictures and tables.
 */
export interface PageContent {
  readonly scenario: string;
  readonly answer: string;
  readonly headline: readonly Figure[];
  /** Lists of the first page: what was found, cost and date, what the answer rests on. */
  readonly findings: readonly string[];
  readonly costsAndDates: readonly string[];
  readonly assumptions: readonly string[];
  /** Where it comes from: scenario, digest, seed, version. */
  readonly facts: readonly Fact[];
  readonly tables: readonly PageTable[];
  /** Which files beside the page hold more. */
  readonly more: string;
}

/** Stands on every report: the model knows nothing of what may and may not be done in a plant. */
export const SAFETY_CAUTION =
  'This report is about time and numbers only. Paint booths, ovens, lifting, road tests and overtime are ' +
  'governed by local codes and licensed practice; have every change to them checked by those responsible ' +
  'before it is made.';

/** Figures of the page are not broken at the end of a line; a picture is no text. */
const eta = new Eta({
  autoEscape: true,
  autoFilter: true,
  filterFunction: (value) =>
    String(value).startsWith('data:') ? String(value) : unbroken(shown(String(value))),
});

/** One HTML page that needs no other file. The first picture is the one of the first page. */
export function renderPage(content: PageContent, drawn: readonly Picture[]): string {
  const pictures = drawn.map(({ alt, width, height, png }) => ({
    alt,
    width,
    height,
    source: `data:image/png;base64,${png.toString('base64')}`,
  }));
  const tables = content.tables.map(explained);
  return eta.renderString(PAGE_TEMPLATE, { ...content, tables, pictures, caution: SAFETY_CAUTION });
}

/** An estimate as a number of the first page. */
export function figure(what: string, estimate: Estimate): Figure {
  return {
    what,
    value: mean(estimate),
    interval: intervalAndCount(estimate),
    cell: estimated(estimate),
  };
}

/** What the head of every results file says of where it comes from. */
interface Origin {
  readonly scenario: { readonly name: string; readonly file: string; readonly digest: string };
  readonly seed: string;
  readonly program: string;
  readonly version: number;
}

/** Where a page comes from; `own` are facts of the study, `files` those that it read besides the scenario. */
export function origin(
  { scenario, seed, program, version }: Origin,
  own: readonly Fact[],
  files: readonly Fact[] = [],
): Fact[] {
  return [
    ['Scenario', scenario.name],
    ['File', scenario.file],
    ...files,
    ['Digest', scenario.digest],
    ['Seed', seed],
    ...own,
    ['Program', `rateproof ${program}, results version ${version}`],
  ];
}

/** The note of a scenario, where it has one. */
export function noteOf({ note }: { readonly note: string | null }): string[] {
  return note === null ? [] : [`Note in the scenario: ${note}`];
}
