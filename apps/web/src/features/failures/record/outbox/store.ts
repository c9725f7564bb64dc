/** Reports and unfinished forms kept on this device, photos included, until they are safe on the server. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { z } from 'zod';
import type { NewReport } from '#contracts/failures.ts';
import type { Draft, DraftPhoto } from '../draft.ts';

export interface Waiting {
  /** The report's own id: sent as often as it takes, it is recorded once. */
  readonly id: string;
  readonly personId: string;
  readonly recordedAt: string;
  /** What the person will recognise it by. */
  readonly label: string;
  readonly body: z.input<typeof NewReport>;
  /** The form as it was, to correct it by. */
  readonly draft: Draft;
  /** Still to be sent. */
  readonly photos: readonly DraftPhoto[];
  /** Its number, once the server has the report and only photos are left. */
  readonly number: string | null;
  /** Why the server does not take it, in its words. */
  readonly refusal: string | null;
}

interface Schema extends DBSchema {
  waiting: { key: string; value: Waiting };
  drafts: { key: string; value: { personId: string; draft: Draft } };
}

let opened: Promise<IDBPDatabase<Schema>> | undefined;
const database = () => {
  opened ??= openDB<Schema>('escape-ledger', 1, {
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' });
      db.createObjectStore('drafts', { keyPath: 'personId' });
    },
  });
  return opened;
};

/** Tells every page of the dashboard, in this tab and others, that the outbox has changed. */
const changes = new BroadcastChannel('escape-ledger.outbox');
const listeners = new Set<() => void>();
changes.onmessage = () => {
  for (const listener of listeners) listener();
};
const changed = () => {
  for (const listener of listeners) listener();
  changes.postMessage(null);
};
export const onOutboxChange = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => void listeners.delete(listener);
};

/** Oldest first: ids are ordered by time. */
export const readWaiting = async (): Promise<Waiting[]> => (await database()).getAll('waiting');
export async function keepWaiting(report: Waiting): Promise<void> {
  await (await database()).put('waiting', report);
  changed();
}
export async function dropWaiting(id: string): Promise<void> {
  await (await database()).delete('waiting', id);
  changed();
}

export const readDraft = async (personId: string): Promise<Draft | undefined> =>
  (await (await database()).get('drafts', personId))?.draft;
export async function keepDraft(personId: string, draft: Draft): Promise<void> {
  await (await database()).put('drafts', { personId, draft });
}
export async function dropDraft(personId: string): Promise<void> {
  await (await database()).delete('drafts', personId);
}
