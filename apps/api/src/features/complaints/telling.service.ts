/** Who is told what about complaints: inside the product and by mail, in the transaction of the change. */
import { DateTime } from 'luxon';
import { notify } from '#api/features/notices/notify.service.ts';
import { listColleagues } from '#api/features/people/colleagues.service.ts';
import { safetyPersonOf } from '#api/features/plant-calendar/product-safety.service.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { NoticeKind } from '#contracts/notice-kinds.ts';
import type { Fact } from '#contracts/notice-words.ts';
import type { Reply } from '#contracts/reply-times.ts';
import type { Tx } from '#db/client.ts';

export interface About {
  id: string;
  plantId: string;
  number: string;
  title: string;
  customerCode: string;
}

const tell = (
  unit: Unit,
  about: About,
  kind: NoticeKind,
  to: readonly string[],
  key: string,
  facts: Record<string, Fact> = {},
) =>
  notify(unit, {
    to,
    kind,
    key: `complaint ${about.id} ${kind} ${key}`,
    facts: { number: about.number, title: about.title, customer: about.customerCode, by: unit.actor.name, ...facts },
    link: `/complaints/${about.id}`,
    plantId: about.plantId,
  });

export const managersOf = async (tx: Tx, plantId: string): Promise<string[]> =>
  (await listColleagues(tx, plantId, 'complaints.consent')).map(({ id }) => id);

/** The person responsible for product safety; every manager where nobody is named. */
export async function tellSafety(unit: Unit, about: About): Promise<void> {
  const person = await safetyPersonOf(unit.tx, about.plantId);
  const to = person ? [person.id] : await managersOf(unit.tx, about.plantId);
  await tell(unit, about, 'complaint_safety', to, unit.at.toISOString());
}

export const tellOwner = (unit: Unit, about: About, ownerId: string): Promise<void> =>
  tell(unit, about, 'complaint_owner', [ownerId], unit.at.toISOString());

export interface ClockNews {
  id: string;
  kind: Reply;
  ownerId: string;
  dueAt: Date;
}

const dueFacts = ({ kind, dueAt }: ClockNews, zone: string): Record<string, Fact> => {
  const due = DateTime.fromJSDate(dueAt, { zone });
  return { reply: `#reply_${kind}`, due: due.toFormat('yyyy-MM-dd'), time: due.toFormat('HH:mm') };
};

export const tellHandedOver = (unit: Unit, about: About, clock: ClockNews, zone: string): Promise<void> =>
  tell(
    unit,
    about,
    'clock_handed_over',
    [clock.ownerId],
    `${clock.id} ${unit.at.toISOString()}`,
    dueFacts(clock, zone),
  );

/** The owner when a quarter of the time is left, the plant's managers as well when a tenth is. */
export async function tellRunningOut(
  unit: Unit,
  about: About,
  clock: ClockNews,
  zone: string,
  level: 1 | 2,
): Promise<void> {
  const key = `${clock.id} ${clock.dueAt.toISOString()}`;
  const facts = dueFacts(clock, zone);
  if (level === 1) return tell(unit, about, 'clock_short', [clock.ownerId], key, facts);
  const owner = await unit.tx.person.findUnique({ where: { id: clock.ownerId }, select: { name: true } });
  const to = [clock.ownerId, ...(await managersOf(unit.tx, about.plantId))];
  await tell(unit, about, 'clock_urgent', to, key, { ...facts, owner: owner?.name ?? '' });
}

/** Everybody who may give the consent is asked. */
export async function tellConsentAsked(unit: Unit, about: About, consentId: string, reason: string): Promise<void> {
  const person = await safetyPersonOf(unit.tx, about.plantId);
  const to = [...(person ? [person.id] : []), ...(await managersOf(unit.tx, about.plantId))];
  await tell(unit, about, 'consent_asked', to, consentId, { reason });
}

export const tellConsentAnswered = (
  unit: Unit,
  about: About,
  consent: { id: string; askedById: string },
  answer: 'given' | 'refused',
): Promise<void> =>
  tell(unit, about, 'consent_answered', [consent.askedById], consent.id, { answer: `#consent_${answer}` });
