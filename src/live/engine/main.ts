import type { Asked, Told } from './messages.js';
import { Tries } from './tries.js';

/** The engine of the page, in a thread of its own: tries what the reader asks, and tells what it sees. */
const port = globalThis as unknown as {
  postMessage: (told: Told) => void;
  onmessage: ((event: { readonly data: Asked }) => void) | null;
};
let tries: Tries | undefined,
  current = new AbortController();
const tell = (told: Told): void => {
  port.postMessage(told);
};

port.onmessage = ({ data }) => {
  void answer(data);
};

async function answer(asked: Asked): Promise<void> {
  try {
    if (asked.kind === 'begin') {
      tries = new Tries(asked.tryIt, asked.report, tell);
      return;
    }
    current.abort();
    if (asked.kind === 'rest') return;
    const mine = (current = new AbortController());
    await tries?.with(asked.id, asked.numbers, mine.signal);
  } catch (error) {
    // Ended by the next one.
    if (error instanceof DOMException && error.name === 'AbortError') return;
    tell({ kind: 'fault', message: error instanceof Error ? error.message : String(error) });
  }
}
