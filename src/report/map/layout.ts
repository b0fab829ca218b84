import type { Scenario } from '../../scenario/types/scenario.js';
import type { RouteMap } from '../../study/route/types.js';
import { inWords } from './in-words.js';
import { across } from './parts/across.js';
import { down } from './parts/down.js';
import { key, notes, title } from './parts/head.js';
import type { Seen } from './seen.js';
import type { Drawing } from './shapes.js';
import { arcsOf } from './signs/backs.js';
import { bracketsOf } from './signs/companions.js';
import { stripOf } from './strip.js';
import { type Form, sectionsOf, type World } from './world.js';

/** Forms for what the map is looked at on. */
export const FORMS = {
  // Also looked at where a page or a mail fits it into two thirds of its width.
  screen: { width: 1440, columns: 0, margin: 24, nameSize: 12.5, smallSize: 11, isDense: false },
  // Beside the contents of a page, at the size at which it is drawn.
  page: { width: 1000, columns: 0, margin: 20, nameSize: 12, smallSize: 11, isDense: false },
  phone: { width: 390, columns: 1, margin: 12, nameSize: 13, smallSize: 11.5, isDense: false },
  paper: {
    width: 1000,
    columns: 3,
    margin: 8,
    nameSize: 11.5,
    smallSize: 10.5,
    pageHeight: 1414,
    isDense: true,
  },
} as const satisfies Readonly<Record<string, Form>>;
export type FormName = keyof typeof FORMS;

/** Millimetres. */
const A4 = { width: 210, height: 297 };

/** Below this width the strip runs down. */
const NARROW = 900;

/** The form for a width in CSS pixels: across where there is room, else down in one column or two. */
export function formOf(width: number): Form {
  const base = width >= NARROW ? FORMS.screen : FORMS.phone;
  return { ...base, width, columns: width >= NARROW ? 0 : width >= 700 ? 2 : 1 };
}

/** Where everything of the map stands; `seen`: by a study of the same scenario. */
export function mapLayout(scenario: Scenario, route: RouteMap, form: Form, seen?: Seen): Drawing {
  const strip = stripOf(route),
    world: World = {
      scenario,
      route,
      strip,
      brackets: bracketsOf(route.companions, strip),
      seen,
      form,
    },
    sections = sectionsOf(strip),
    arcs = arcsOf(strip, [route.main, ...route.sides]);
  const head = title(world, form.margin - 6),
    signs = key(world, form.margin - 6 + head.height + 4),
    top = form.margin + head.height + signs.height + 4,
    body = (form.columns === 0 ? across : down)(world, sections, arcs, top),
    foot = notes(world, top + body.height + 8),
    height = Math.max(form.pageHeight ?? 0, Math.ceil(top + body.height + 8 + foot.height + form.margin)),
    scale = Math.min(A4.width / form.width, A4.height / height);
  return {
    width: form.width,
    height,
    page: form.pageHeight === undefined ? undefined : { width: form.width * scale, height: height * scale },
    title: `Map of ${scenario.name}`,
    caption: seen?.caption ?? 'What the scenario says, drawn.',
    words: inWords(world, sections),
    groups: [head.group, signs.group, ...body.groups, ...foot.groups],
  };
}
