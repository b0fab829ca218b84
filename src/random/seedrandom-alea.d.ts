/** The one file of seedrandom used here; its own types cover only the entry that pulls in Node's crypto. */
declare module 'seedrandom/lib/alea.js' {
  interface Alea {
    /** The next number in [0, 1). */
    (): number;
    /** The next signed 32-bit integer. */
    int32(): number;
  }
  export default function alea(seed: string): Alea;
}
