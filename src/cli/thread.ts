import { parentPort, workerData } from 'node:worker_threads';
import { Meter } from '../study/run/meter.js';
import { waitToOptimise } from '../study/run/plans.js';
import { workFor } from './front/in-front.js';
import type { Given, Said, Stop } from './front/said.js';
import { stop } from './interrupt.js';
import { run } from './run.js';

// What a command does is done in this thread, and may hold it for long: the one in front hears Ctrl-C,
// shows progress and prints meanwhile.
const { args, columns, meter } = workerData as Given;
waitToOptimise();
const tell = (said: Said): void => {
  parentPort?.postMessage(said);
};
workFor({ tell, columns, meter: new Meter(meter) });
parentPort?.on('message', (why: Stop) => {
  stop(why);
});
tell({ kind: 'code', code: await run(args) });
parentPort?.close();
