import { gzipSync } from 'node:zlib';
import { Eta } from 'eta/core';
import { shown } from '../../study/shown.js';
import { explained, type PageTable } from '../columns.js';
import { type FirstScreen, linesOf } from '../first/first.js';
import { type MapForms, mapSection } from '../map/section.js';
import { laidOut, type SheetCell } from '../sheets/layout.js';
import { isTime, unbroken } from '../unbroken.js';
import { definitionsFor } from './definitions.js';
import { captioned, grouped, onFirst, type Picture, roomOf } from './pictures.js';
import { prose } from './prose.js';
import { PAGE_TEMPLATE } from './template.js';
import type { TryIt } from './try-it.js';

export type { Picture };

/** A fact of where the page comes from. */
export type Fact = readonly [what: string, value: string];

/** What the page of a study shows, from the top down: each layer is complete in itself. */
export interface PageContent {
  readonly scenario: string;
  readonly first: FirstScreen;
  /** Where the capacity goes; empty where that was not looked at. */
  readonly losses: readonly string[];
  /** The answer with all that was found, as the terminal has it. */
  readonly inFull: string;
  readonly findings: readonly string[];
  readonly costsAndDates: readonly string[];
  /** What was assumed, value by value, guesses first; empty where the study does not know. */
  readonly values: readonly string[];
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
  const { first, tables } = content,
    [ahead, ...others] = pictures,
    behind = others.map(captioned),
    inRoom = (room: string) => behind.filter(({ name }) => roomOf(name) === room);
  const page = eta.renderString(PAGE_TEMPLATE, {
    ...content,
    ...{ prose, isTime },
    lines: linesInProse(first),
    firstPictures: ahead === undefined ? [] : [onFirst(ahead, first)],
    hasLosses: content.losses.length > 0 || inRoom('losses').length > 0,
    lossPictures: inRoom('losses'),
    restPictures: inRoom('rests'),
    groups: grouped(behind),
    tables: tables.map(explained),
    definitions: definitionsFor(wordsOf(content, pictures)),
    source: sourceOf(content),
    caution: SAFETY_CAUTION,
  });
  // Behind the filter for text: none of them holds anything that ends its element.
  return page
    .replace('<!-- results -->', () => packed(carried.results))
    .replace('<!-- cells -->', () => packed(JSON.stringify(cellsOf(tables))))
    .replace('<!-- script -->', () => carried.script);
}

const packed = (text: string): string => gzipSync(text, { level: 9 }).toString('base64');

/** The same tables for whoever copies them: numbers by themselves, as in the sheets of the workbook. */
const cellsOf = (tables: readonly PageTable[]): object =>
  Object.fromEntries(
    tables.map(({ id, head, rows }) => {
      const sheet = laidOut(head, rows);
      return [id, { head: sheet.head, rows: sheet.rows.map((row) => row.map(bare)) }];
    }),
  );

const bare = ({ value }: SheetCell): string | number =>
  value instanceof Date ? value.toISOString().slice(0, 10) : (value ?? '');

/** What a line is known from, in brackets at its end: it is set softer. */
const BASIS = /^(.*?)( \([^()]*\)\.)?$/s;

/** The answers of the first screen, with days and weeks as a reader's language writes them. */
const linesInProse = (first: FirstScreen) =>
  linesOf(first).map((line) => {
    const brief = prose(line.brief),
      // What is bought and for how much is no small print.
      [, lead = brief, basis = ''] = line.key === 'toDo' ? [] : (BASIS.exec(brief) ?? []);
    return { ...line, brief, lead, basis, more: prose(line.more) };
  });

/** All that a page says, but for the cells of its tables. */
const wordsOf = (content: PageContent, pictures: readonly Picture[]): string[] => [
  ...Object.values(content.first).map((each) => JSON.stringify(each)),
  content.inFull,
  ...[content.losses, content.findings, content.costsAndDates, content.values, content.assumptions].flat(),
  ...content.tables.flatMap(({ title, note, head }) => [title, note, ...head]),
  ...pictures.flatMap(({ finding, how }) => [finding, how]),
];

/** On paper the first page may lie by itself: where it comes from, and what it is not. */
const sourceOf = ({ facts }: PageContent): string =>
  facts
    .filter(([what]) => ['File', 'Digest', 'Seed', 'Program'].includes(what))
    .map(([what, value]) => `${what}: ${value}`)
    .join('. ') + '. A model informs a decision; it does not make it.';

const MAP = '<!-- map -->',
  MAP_LINK = '<!-- map link -->';

/** The page with the route of the scenario in it. */
export const pageWithMap = (page: string, forms: MapForms): string =>
  page
    .replaceAll(MAP_LINK, () => '<li><a href="#route">The route</a></li>')
    .replace(MAP, () => mapSection(forms));

const LEVERS = '<!-- levers -->',
  LEVERS_LINK = '<!-- levers link -->';

/** The page with the scenario and the engine in it, and a place where its script shows them. */
export const pageWithTryIt = (page: string, tryIt: TryIt, engine: string): string =>
  page
    .replaceAll(LEVERS_LINK, () => '<li><a href="#try">Try it</a></li>')
    .replace(
      LEVERS,
      () =>
        '<section id="try-it" aria-labelledby="try" hidden><h2 id="try">Try it</h2></section>' +
        carried('levers', JSON.stringify(tryIt)) +
        carried('engine', engine),
    );

/** Something that the page carries and its script unpacks. */
const carried = (id: string, text: string): string =>
  `<script type="application/octet-stream" id="${id}">${packed(text)}</script>`;

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
