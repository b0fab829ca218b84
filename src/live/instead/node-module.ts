import * as csv from 'csv-parse/sync';

/** What a page needs of Node's `module`: the one package that is asked for by name. */
export const createRequire = () => (): typeof csv => csv;
