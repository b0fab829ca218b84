import { Eta } from 'eta/core';
import type { PageTable } from '../tables/overall.js';
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
}

/**
 * What the page of a study shows: the answer, one to three numbers, one picture, then lists, then all
 * pictures and tables.
 */
export interface PageContent {
  readonly scenario: string;
  readonly answer: string;
  readonly headline: readonly Figure[];
  readonly pictures: readonly Picture[];
  /** Lists of the first page: what was found, cost and date, what the answer rests on. */
  readonly findings: readonly string[];
  readonly costsAndDates: readonly string[];
  readonly assumptions: readonly string[];
  /** Where it comes from: scenario, digest, seed, version. */
  readonly facts: readonly (readonly [what: string, value: string])[];
  readonly tables: readonly PageTable[];
  /** Which files beside the page hold more. */
  readonly more: string;
}

/** Stands on every report: the model knows nothing of what may and may not be done in a plant. */
export const SAFETY_CAUTION =
  'This report is about time and numbers only. Paint booths, ovens, lifting, road tests and ' +
  'overtime are governed by local codes ' +
  'and licensed practice; have every change to them checked by the people who answer for them ' +
  'before it is made.';

const eta = new Eta({ autoEscape: true });

/** One HTML page that needs no other file. The first picture is the one of the first page. */
export function renderPage(content: PageContent): string {
  const pictures = content.pictures.map(({ alt, width, height, png }) => ({
    alt,
    width,
    height,
    source: `data:image/png;base64,${png.toString('base64')}`,
  }));
  return eta.renderString(PAGE_TEMPLATE, { ...content, pictures, caution: SAFETY_CAUTION });
}
