/** Runs imports in the background, one at a time, and stops them. */

/** Why a run was ended before its time. */
export class Stopped extends Error {
  readonly code: 'stopped' | 'interrupted';
  constructor(code: 'stopped' | 'interrupted') {
    super(code);
    this.code = code;
  }
}

export interface Runner {
  start(id: string, work: (signal: AbortSignal) => Promise<void>): void;
  /** Waits until the run has ended; false where none was going on. */
  stop(id: string): Promise<boolean>;
  close(): Promise<void>;
}

/** `work` reports its own failures; one that escapes it is a fault of ours and goes to `onFault`. */
export function createRunner(onFault: (error: unknown) => void): Runner {
  const running = new Map<string, { controller: AbortController; done: Promise<void> }>();
  let last: Promise<void> = Promise.resolve();
  const end = async (id: string, cause: 'stopped' | 'interrupted') => {
    const run = running.get(id);
    run?.controller.abort(new Stopped(cause));
    await run?.done;
    return run !== undefined;
  };
  return {
    start(id, work) {
      const controller = new AbortController();
      const done = last
        .then(() => work(controller.signal))
        .catch(onFault)
        .finally(() => running.delete(id));
      running.set(id, { controller, done });
      last = done;
    },
    stop: (id) => end(id, 'stopped'),
    close: async () => {
      await Promise.all([...running.keys()].map((id) => end(id, 'interrupted')));
    },
  };
}
