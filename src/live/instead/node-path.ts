/** What a page needs of Node's `path`: it knows paths from the scenario's own folder, with slashes. */
export const posix = {
  join: (...parts: readonly string[]): string => parts.filter((part) => part !== '.').join('/'),
  isAbsolute: (path: string): boolean => path.startsWith('/'),
};
export const win32 = posix;
/** Names of files have no folder there. */
export const basename = (path: string): string => path;
