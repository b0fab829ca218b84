/** How numbers are written. It stands with the studies, since sentences of theirs hold numbers too. */
export * from '../study/format.js';
