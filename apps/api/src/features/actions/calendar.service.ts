import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { z } from 'zod';
import { hashSecret } from '#api/platform/passwords.ts';
import { notFound } from '#api/platform/problems.ts';
import { actionTerms as german } from '#contracts/action-terms.de.ts';
import { actionTerms as english } from '#contracts/action-terms.en.ts';
import { ActionState } from '#contracts/actions.ts';
import type { Database } from '#db/client.ts';
import { queryOne, queryRows, sql } from '#db/sql.ts';

const Reader = z.object({ id: z.string(), locale: z.string() });
const Entry = z.object({
  id: z.string(),
  number: z.string(),
  title: z.string(),
  description: z.string().nullable(),
  state: ActionState,
  dueOn: z.string(),
  version: z.int(),
  plantCode: z.string(),
});

/** Open actions of a person at the plants that are still theirs. */
const entriesOf = (db: Database, personId: string) =>
  queryRows(
    db.pool,
    sql`select a.id, a.number, a.title, a.description, a.state, a.due_on::text as "dueOn", a.version, p.code as "plantCode"
      from action a join plant p on p.id = a.plant_id
      where a.owner_id = ${personId}::uuid and a.state not in ('verified', 'given_up')
        and exists (select from role_grant g where g.person_id = a.owner_id and (g.plant_id is null or g.plant_id = a.plant_id))
      order by a.due_on, a.id limit 1000`,
    Entry,
  );

/** The due dates of whoever the secret belongs to (iCalendar, RFC 5545): whole days, each under an identity that stays. */
export async function calendarOf(db: Database, secret: string, at: Date, publicUrl: string): Promise<string> {
  const reader = await queryOne(
    db.pool,
    sql`select p.id, p.locale from calendar_feed c join person p on p.id = c.person_id
      where c.secret_hash = ${hashSecret(secret)} and p.retired_at is null`,
    Reader,
  );
  if (!reader) throw notFound('calendar');
  const terms = reader.locale === 'de' ? german : english;
  const calendar = ical({
    name: terms.calendar,
    prodId: { company: 'Escape Ledger', product: 'actions', language: reader.locale },
    method: ICalCalendarMethod.PUBLISH,
    ttl: 3600,
  });
  for (const entry of await entriesOf(db, reader.id)) {
    const event = calendar.createEvent({
      id: `action-${entry.id}@escape-ledger`,
      sequence: entry.version,
      stamp: at,
      start: `${entry.dueOn}T00:00:00Z`,
      timezone: 'UTC',
      allDay: true,
      summary: `${entry.number} ${entry.title}`,
      description: [`${entry.plantCode}: ${terms.state[entry.state]}`, entry.description].filter(Boolean).join('\n\n'),
      url: `${publicUrl}/actions/${entry.id}`,
      transparency: ICalEventTransparency.TRANSPARENT,
    });
    event.categories([{ name: terms.list }]);
  }
  return calendar.toString();
}
