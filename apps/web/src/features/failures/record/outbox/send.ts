import { createReport } from '#contracts/failures.ts';
import { call, ProblemError } from '#web/ui/http.ts';
import { sendPhoto } from '../../send-photo.ts';
import { dropWaiting, keepWaiting, readWaiting, type Waiting } from './store.ts';

/** Refusals that pass by themselves, or once the person has signed in again. */
const passing = new Set([0, 401, 408, 425, 429]);
const passes = (error: unknown): boolean =>
  !(error instanceof ProblemError) ||
  passing.has(error.problem.status) ||
  error.problem.status >= 500 ||
  error.problem.code === 'password_change_required';

/** Sends one report and then its photos, keeping after each step what is left to do. */
async function sendOne(waiting: Waiting): Promise<string> {
  let rest = waiting;
  if (rest.number === null) {
    const { number } = await call(createReport, { body: rest.body, idempotencyKey: rest.id });
    rest = { ...rest, number };
    await keepWaiting(rest);
  }
  for (const photo of waiting.photos) {
    await sendPhoto(rest.id, photo.blob, photo.id);
    rest = { ...rest, photos: rest.photos.filter(({ id }) => id !== photo.id) };
    await keepWaiting(rest);
  }
  await dropWaiting(rest.id);
  return rest.number ?? '';
}

async function refuse(id: string, { problem }: ProblemError): Promise<void> {
  const now = (await readWaiting()).find((it) => it.id === id);
  if (now) await keepWaiting({ ...now, refusal: problem.detail });
}

async function sendInTurn(personId: string, onSent: (id: string, number: string) => void): Promise<void> {
  const tried = new Set<string>();
  for (;;) {
    const waiting = (await readWaiting()).find(
      (it) => it.personId === personId && it.refusal === null && !tried.has(it.id),
    );
    if (!waiting) return;
    tried.add(waiting.id);
    try {
      onSent(waiting.id, await sendOne(waiting));
    } catch (error) {
      if (passes(error)) return;
      await refuse(waiting.id, error as ProblemError);
    }
  }
}

let running: Promise<void> | undefined;

/**
 * Sends everything that waits for this person, oldest first, and stops where the server cannot be reached. One round at a
 * time, in one tab where the browser can tell; the server takes each report once in any case.
 */
export function sendWaiting(personId: string, onSent: (id: string, number: string) => void): Promise<void> {
  const round = () => sendInTurn(personId, onSent);
  running ??= (
    navigator.locks
      ? navigator.locks.request('escape-ledger.outbox', { ifAvailable: true }, (lock) => (lock ? round() : undefined))
      : round()
  ).finally(() => {
    running = undefined;
  });
  return running;
}
