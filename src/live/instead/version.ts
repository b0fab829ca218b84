declare const PROGRAM: string;

/** What `study/version.ts` is in a page: written in by the build. */
export const PROGRAM_VERSION: string = PROGRAM;
