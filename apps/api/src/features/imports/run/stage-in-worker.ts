import { Worker } from 'node:worker_threads';
import { FileFault, type FileFaultCode } from '../file-fault.ts';
import type { StageResult, StageTask } from './stage-file.ts';

export type FromWorker =
  | { type: 'lines'; bytes: Uint8Array<ArrayBuffer> }
  | { type: 'progress'; phase: 'scanning' | 'reading'; share: number; rows: number }
  | { type: 'result'; result: StageResult }
  | { type: 'fault'; code: FileFaultCode; place: string | null };

export interface StageEvents {
  lines(bytes: Uint8Array): Promise<void>;
  progress(phase: 'scanning' | 'reading', share: number, rows: number): void;
  signal: AbortSignal;
}

/** Reads a file in a thread of its own. Throws `FileFault`, the reason of the signal, or whatever `lines` throws. */
export async function stageInWorker(task: StageTask, { lines, progress, signal }: StageEvents): Promise<StageResult> {
  signal.throwIfAborted();
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { workerData: task });
  const { promise, resolve, reject } = Promise.withResolvers<StageResult>();
  const stop = () => reject(signal.reason);
  signal.addEventListener('abort', stop, { once: true });
  worker.on('error', reject);
  let reported = false;
  worker.on('exit', () => {
    if (!reported) reject(new Error('The thread that reads the file ended before its work was done.'));
  });
  let written: Promise<unknown> = Promise.resolve();
  worker.on('message', (message: FromWorker) => {
    reported ||= message.type === 'result' || message.type === 'fault';
    if (message.type === 'lines') {
      written = written.then(() => lines(message.bytes)).then(() => worker.postMessage('more'));
      written.catch(reject);
    } else if (message.type === 'progress') progress(message.phase, message.share, message.rows);
    else if (message.type === 'fault') reject(new FileFault(message.code, message.place));
    else written.then(() => resolve(message.result), reject);
  });
  try {
    return await promise;
  } finally {
    signal.removeEventListener('abort', stop);
    await worker.terminate();
  }
}
