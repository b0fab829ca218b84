const { port1, port2 } = new MessageChannel(),
  waiting: (() => void)[] = [];
port2.onmessage = () => waiting.shift()?.();

/** What a page needs of Node's `timers/promises`: goes on behind the messages that wait. */
export const setImmediate = async (): Promise<void> =>
  new Promise((resolve) => {
    waiting.push(resolve);
    port1.postMessage(null);
  });
