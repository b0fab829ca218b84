import type { Drawing } from './shapes.js';
import { mapSvg, safe } from './svg.js';

/** The map in three forms: for a desk, for a phone, for paper. */
export interface MapForms {
  readonly wide: Drawing;
  readonly narrow: Drawing;
  readonly paper: Drawing;
}

/** The map as a part of a page, which lacks only the style. On a screen the reader can walk along it. */
export const mapSection = ({ wide, narrow, paper }: MapForms): string =>
  '<section class="route" aria-labelledby="route"><h2 id="route">The route</h2>' +
  `<p class="soft">${safe(wide.caption)} ` +
  '<span class="walk">Point at a place or tap it, or go along with the arrow keys: what is done ' +
  'there, and what is known of it.</span></p>' +
  walked('wide', mapSvg(wide, 'map-wide')) +
  walked('narrow', mapSvg(narrow, 'map-narrow')) +
  `<div class="map paper">${mapSvg(paper, 'map-paper')}</div></section>`;

/** A map along which keys and pointers go; what stands at a place is shown and said by the script. */
const walked = (form: string, svg: string): string =>
  `<div class="map ${form}" role="group" tabindex="0" aria-label="map of the route, place by place" ` +
  `aria-describedby="walk">${svg}` +
  '<div class="ring" hidden></div><div class="told" hidden></div>' +
  '<p class="said unseen" aria-live="polite"></p></div>';
