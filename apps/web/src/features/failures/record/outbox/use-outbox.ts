import { useEffect, useState } from 'react';
import { usePerson } from '#web/ui/person.ts';
import { useForgetReports } from '../../queries.ts';
import { sendWaiting } from './send.ts';
import { onOutboxChange, readWaiting, type Waiting } from './store.ts';

/** How often a waiting report is tried again, in milliseconds. */
const pause = 15_000;

/** The reports that wait on this device, whoever recorded them. */
export const useWaiting = (): readonly Waiting[] => {
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  useEffect(() => {
    const read = () => void readWaiting().then(setWaiting, () => setWaiting([]));
    read();
    return onOutboxChange(read);
  }, []);
  return waiting;
};

type Told = (id: string, number: string) => void;
const told = new Set<Told>();
/** Tells of each report that has reached the server, by its id and its number there. */
export const useSent = (listener: Told): void => {
  useEffect(() => {
    told.add(listener);
    return () => void told.delete(listener);
  }, [listener]);
};
export const sendNow = (personId: string): Promise<void> =>
  sendWaiting(personId, (id, number) => {
    for (const listener of told) listener(id, number);
  });

/** Sends what waits: now, when the network is back, when the page is looked at again, and every quarter of a minute. */
export const useSending = (waiting: readonly Waiting[]): void => {
  const { id: personId } = usePerson();
  const forget = useForgetReports();
  useSent(forget);
  const due = waiting.some((it) => it.personId === personId && it.refusal === null);
  useEffect(() => {
    if (!due) return;
    const send = () => void sendNow(personId);
    send();
    const again = setInterval(send, pause);
    addEventListener('online', send);
    document.addEventListener('visibilitychange', send);
    return () => {
      clearInterval(again);
      removeEventListener('online', send);
      document.removeEventListener('visibilitychange', send);
    };
  }, [due, personId]);
};
