/** What V8 and Node say when a thread, an array or a table is larger than there is room for. */
const SIGNS = /out of memory|allocation failed|Invalid (typed )?array length|maximum size exceeded/i;

/** Whether what was thrown, here or in another thread, is for want of memory. */
export const ranOutOfMemory = (error: unknown): boolean =>
  error instanceof Error &&
  (('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY') || SIGNS.test(error.message));
