/** A page as it is read: the spaces at which no line is broken look like any other. */
export const asRead = (page: unknown): string => String(page).replaceAll('\u00a0', ' ');
