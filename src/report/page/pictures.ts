import { capital } from '../../study/format.js';
import type { FirstScreen } from '../first/first.js';
import { prose } from './prose.js';

/** A picture of the page, which the page draws itself. */
export interface Picture {
  readonly name: string;
  readonly finding: string;
  readonly how: string;
  readonly alt: string;
}

/** A picture with what stands over it. */
export interface Captioned extends Picture {
  readonly title: string;
  readonly more: string;
}

/** The answer stands above it: the picture says what it shows, and its finding is with its numbers. */
export const onFirst = ({ name, finding, how, alt }: Picture, { picture }: FirstScreen): Captioned => ({
  ...{ name, finding, alt: prose(alt), title: picture.title, more: picture.more },
  how: prose(`${finding}. ${how}`),
});

/** More words would not be read in bold. */
const MOST_WORDS = 25;
/** `(95 % CI 3.4 to 3.5, 9 replications)` is `(3.4 to 3.5)` in a title; the level stands with the numbers. */
const LEVEL = /\(\d[\d.]* % CI ([^()]*?)(?:, \d[\d,]* replications?)?\)/g;

export function captioned({ name, finding, how, alt }: Picture): Captioned {
  const told = prose(finding.replace(LEVEL, '($1)'));
  return {
    ...{ name, finding, alt: prose(alt) },
    how: prose(told === prose(finding) ? how : `${finding}. ${how}`),
    ...titled(told),
  };
}

const wordsIn = (text: string): number => text.trim().split(/\s+/).length;
const BRACKETS = / ?\([^()]*\)/g;

/**
 * As a title if it is short; else up to a semicolon or a comma outside of brackets, with the rest below it;
 * else that without its brackets, with all of it below.
 */
function titled(told: string): Pick<Captioned, 'title' | 'more'> {
  if (wordsIn(told) <= MOST_WORDS) return { title: told, more: '' };
  const open = told.replace(BRACKETS, (bracket) => '_'.repeat(bracket.length)),
    ends = ['; ', ', ', ': '].flatMap((mark) =>
      Array.from(open.matchAll(new RegExp(mark, 'g')), ({ index }) => index).reverse(),
    ),
    cut = ends.find((at) => wordsIn(told.slice(0, at)) <= MOST_WORDS);
  if (cut !== undefined) return { title: told.slice(0, cut), more: `${capital(told.slice(cut + 2))}.` };
  return { title: told.slice(0, ends.at(-1)).replace(BRACKETS, ''), more: `${told}.` };
}

/** The questions by which pictures are grouped, in the order of the page. */
export const QUESTIONS = {
  holds: 'Does it hold?',
  agrees: 'What agrees with the log?',
  together: 'What do two do together?',
  stops: 'What stops it?',
  places: 'Where do units wait?',
  quality: 'What has to be done again?',
  people: 'Who is busy?',
  dates: 'When is it done?',
  money: 'What does it cost?',
  else: 'What else changes?',
  times: 'Do the distributions fit?',
} as const;

/** Where a picture stands: behind a question, with the losses, or with what the answer rests on. */
export type Room = keyof typeof QUESTIONS | 'losses' | 'rests';

const ROOMS: Readonly<Record<string, Room>> = {
  '01-throughput-by-week': 'holds',
  '15-losses': 'losses',
  '16-trials': 'stops',
  '04-bottlenecks': 'stops',
  '03-place-time': 'stops',
  '02-wip-by-site': 'places',
  '05-lead-time': 'dates',
  '06-buffers': 'places',
  '07-first-time-through': 'quality',
  '08-shipped-against-plan': 'dates',
  '09-journey': 'dates',
  '10-changeovers': 'stops',
  '11-crew-load': 'people',
  '12-outage-recovery': 'holds',
  '13-cost-per-unit': 'money',
  '14-warm-up': 'holds',
  '01-differences': 'holds',
  '02-throughput-by-week': 'holds',
  '03-wip-by-week': 'places',
  '01-effects': 'holds',
  '02-together': 'together',
  '03-effects-elsewhere': 'else',
  '01-throughput-against-rate': 'holds',
  '04-losses': 'losses',
  '05-trials': 'stops',
  '02-wip-and-lead-time-against-rate': 'dates',
  '03-used-most': 'stops',
  '01-reliefs': 'holds',
  '02-measure-next': 'rests',
  '01-throughput-by-places': 'holds',
  '06-cases': 'holds',
  '01-steps': 'holds',
  '02-most-for-each-sum': 'money',
  '03-last-unit-by-step': 'dates',
  '06-shipped-by-step': 'holds',
  '02-places': 'places',
  '03-place-by-place': 'places',
  '01-shipped-by-day': 'agrees',
  '02-measures-in-bands': 'agrees',
  '03-step-times': 'agrees',
  '04-units-inside': 'places',
  '01-orders': 'dates',
  '02-shipped-by-day': 'dates',
  '01-times': 'times',
  '02-distributions': 'times',
  '03-quantiles': 'times',
};

/** Where the picture of that file name stands; one that is new answers whether it holds. */
export const roomOf = (name: string): Room =>
  (Object.hasOwn(ROOMS, name) ? ROOMS[name] : undefined) ?? 'holds';
export const isPlaced = (name: string): boolean => Object.hasOwn(ROOMS, name);

/** Pictures behind a question. */
export interface Group {
  readonly id: string;
  readonly title: string;
  readonly pictures: readonly Captioned[];
}

/** The questions that have a picture. */
export const grouped = (pictures: readonly Captioned[]): Group[] =>
  Object.entries(QUESTIONS)
    .map(([room, title]) => ({
      id: `ask-${room}`,
      title,
      pictures: pictures.filter(({ name }) => roomOf(name) === room),
    }))
    .filter((group) => group.pictures.length > 0);
