/** What a page needs of Node's `v8`: a browser takes no flags, and no result hangs on them. */
export const setFlagsFromString = (): void => undefined;
