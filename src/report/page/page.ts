import { gzipSync } from 'node:zlib';
import { Eta } from 'eta/core';
import { shown } from '../../study/shown.js';
import { explained, type PageTable } from '../columns.js';
import type { FirstScreen } from '../first/first.js';
import type { Drawing } from '../map/shapes.js';
import { mapSvg } from '../map/svg.js';
import { unbroken } from '../unbroken.js';
import { PAGE_TEMPLATE } from './template.js';
import type { TryIt } from './try-it.js';

/** A picture of the page, which the page draws itself. */
export interface Picture {
  readonly name: string;
  readonly finding: string;
  readonly how: string;
  readonly alt: string;
}

/** A fact of where the page comes from. */
export type Fact = readonly [what: string, value: string];

/** What the page of a study shows, from the top down: each layer is complete in itself. */
export interface PageContent {
  readonly scenario: string;
  readonly first: FirstScreen;
  /** The answer with all that was found, as the terminal has it. */
  readonly inFull: string;
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

/** Figures of the page are not broken at the end of a line. */
const eta = new Eta({
  autoEscape: true,
  autoFilter: true,
  filterFunction: (value) => unbroken(shown(String(value))),
});

/** What the page carries besides its text. */
export interface Carried {
  /** JSON of the results, from which the pictures are drawn. */
  readonly results: string;
  /** The script that draws them. */
  readonly script: string;
}

/** One HTML page that needs no other file and no network. The first picture is on the first screen. */
export function renderPage(content: PageContent, pictures: readonly Picture[], carried: Carried): string {
  const page = eta.renderString(PAGE_TEMPLATE, {
    ...content,
    tables: content.tables.map(explained),
    pictures,
    caution: SAFETY_CAUTION,
  });
  // Behind the filter for text: neither holds anything that ends its element.
  return page
    .replace('<!-- results -->', () => zipped(carried.results))
    .replace('<!-- script -->', () => carried.script);
}

const MAP = '<!-- map -->';

/** The page with the route of the scenario in it, in two forms. */
export const pageWithMap = (page: string, wide: Drawing, narrow: Drawing): string =>
  page.replace(
    MAP,
    () =>
      '<section aria-labelledby="route"><h2 id="route">The route</h2>' +
      '<p class="soft">What the scenario says, drawn; filled: units that stand there on average.</p>' +
      `<div class="map wide">${mapSvg(wide, 'map-wide')}</div>` +
      `<div class="map narrow">${mapSvg(narrow, 'map-narrow')}</div></section>`,
  );

const LEVERS = '<!-- levers -->';

/** The page with the scenario and the engine in it, and a place where its script shows them. */
export const pageWithTryIt = (page: string, tryIt: TryIt, engine: string): string =>
  page.replace(
    LEVERS,
    () =>
      '<section id="try-it" aria-labelledby="try" hidden><h2 id="try">Try it</h2></section>' +
      packed('levers', JSON.stringify(tryIt)) +
      packed('engine', engine),
  );

/** Something that the page carries and its script unpacks. */
const packed = (id: string, text: string): string =>
  `<script type="application/octet-stream" id="${id}">${zipped(text)}</script>`;
const zipped = (text: string): string => gzipSync(text, { level: 9 }).toString('base64');

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
