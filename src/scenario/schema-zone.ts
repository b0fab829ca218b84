import { z } from 'zod';
import { nearest } from './names-nearest.js';

/** True for an IANA zone (`Europe/Oslo`) or UTC. */
export function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return /^[A-Za-z]/.test(zone);
  } catch {
    return false;
  }
}

const ZONE_WANTED = 'a time zone of the IANA list, such as "Europe/Oslo", or UTC';

/** A name of the IANA time zone database. */
export const zone = z.string({ error: ZONE_WANTED }).superRefine((text, context) => {
  if (isZone(text)) return;
  const suggestion = nearest(text, Intl.supportedValuesOf('timeZone'));
  context.addIssue({ code: 'custom', message: ZONE_WANTED, params: { suggestion } });
});
