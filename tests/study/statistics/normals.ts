import seedrandom from 'seedrandom';

/** Standard normal numbers (Box & Muller 1958). */
export function normals(seed: string): () => number {
  const uniform = seedrandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
