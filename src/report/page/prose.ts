import { dateText } from '../first/first.js';
import { NO_BREAK } from '../unbroken.js';

/** What stands in quotes is a name, which stays as it is written; else days and weeks. */
const NAME_OR_TIME = /“[^”\n]*”|"[^"\n]*"|(?<![\w./-])(\d{4})-(?:(\d\d)-(\d\d)|W(\d\d))(?![\w/-]|\.\w)/g;

/**
 * A sentence as a reader's language writes it: `27 April 2028` for 2028-04-27, `week 49 of 2027` for
 * 2027-W49, neither broken at the end of a line. Tables keep the ISO forms.
 */
export const prose = (text: string): string =>
  text.replace(NAME_OR_TIME, (found: string, year?: string, month?: string, day?: string, week?: string) => {
    if (year === undefined) return found;
    if (week !== undefined) return together(`week ${Number(week)} of ${year}`);
    return month === undefined || day === undefined || Number.isNaN(Date.parse(found))
      ? found
      : together(dateText(found));
  });

const together = (text: string): string => text.replaceAll(' ', NO_BREAK);
