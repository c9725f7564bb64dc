/** Thread that reads a file, so that the service answers other requests meanwhile. Lines leave it as bytes, a few chunks ahead at most. */
import { parentPort, workerData } from 'node:worker_threads';
import { FileFault } from '../file-fault.ts';
import { type StageTask, stageFile } from './stage-file.ts';
import type { FromWorker } from './stage-in-worker.ts';

const port = parentPort!;
const ahead = 4;
const progressEvery = 250;

let outstanding = 0;
let resume: (() => void) | null = null;
port.on('message', () => {
  outstanding -= 1;
  resume?.();
});
const send = (message: FromWorker, transfer: ArrayBuffer[] = []) => port.postMessage(message, transfer);

let lastProgress = 0;
try {
  const result = await stageFile(workerData as StageTask, {
    async write(text) {
      const bytes = new TextEncoder().encode(text);
      outstanding += 1;
      send({ type: 'lines', bytes }, [bytes.buffer]);
      while (outstanding >= ahead) await new Promise<void>((resolve) => (resume = resolve));
    },
    progress(phase, share, rows) {
      const now = performance.now();
      if (now - lastProgress < progressEvery) return;
      lastProgress = now;
      send({ type: 'progress', phase, share, rows });
    },
  });
  send({ type: 'result', result });
} catch (error) {
  if (!(error instanceof FileFault)) throw error;
  send({ type: 'fault', code: error.code, place: error.place });
} finally {
  port.close();
}
