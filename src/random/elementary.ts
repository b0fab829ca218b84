/**
 * Elementary functions in plain arithmetic (FreeBSD's msun, as ported by stdlib), which have the same bits in
 * every JavaScript engine. Those of `Math` have not: Chromium 156 gives another last bit of `exp` for 9 of
 * 100 numbers than Node 20, whose bits these are (tried with 300,000 values each).
 */
export { default as exp } from '@stdlib/math-base-special-exp';
export { default as expm1 } from '@stdlib/math-base-special-expm1';
export { default as log } from '@stdlib/math-base-special-ln';
export { default as log1p } from '@stdlib/math-base-special-log1p';
export { default as log2 } from '@stdlib/math-base-special-log2';
