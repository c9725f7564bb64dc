import { newId } from '#api/platform/ids.ts';
import { queueMail } from '#api/platform/mail/queue.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { NoticeKind } from '#contracts/notice-kinds.ts';
import { type Fact, noticeWords } from '#contracts/notice-words.ts';
import { sql, txRows } from '#db/sql.ts';
import { Told } from './notices.queries.ts';

export interface News {
  /** People; whoever acts is not told what they did themselves. */
  to: readonly string[];
  kind: NoticeKind;
  /** What it tells: a person is told the same once, however often this is called. */
  key: string;
  /** What the words of the kind leave open; a day as `YYYY-MM-DD`, a word of `noticeFacts` as `#word`. */
  facts: Readonly<Record<string, Fact>>;
  /** Page of the dashboard, such as `/actions/…`. */
  link: string;
  plantId: string | null;
}

/** Tells people inside the product, and by mail those who want it, in the transaction of what it tells. */
export async function notify(unit: Unit, { to, kind, key, facts, link, plantId }: News): Promise<void> {
  const people = [...new Set(to)].filter((id) => id !== unit.actor.id);
  if (people.length === 0) return;
  const told = await txRows(
    unit.tx,
    sql`with told as (
        insert into notice (id, person_id, plant_id, kind, key, facts, link, at)
        select n.id, p.id, ${plantId}::uuid, ${kind}, ${key}, ${JSON.stringify(facts)}::jsonb, ${link}, ${unit.at}
        from unnest(${people.map(() => newId())}::uuid[], ${people}::uuid[]) as n (id, person_id)
        join person p on p.id = n.person_id and p.retired_at is null
        on conflict (person_id, key) do nothing returning person_id)
      select p.email, p.locale from told join person p on p.id = told.person_id
      left join notice_preference c on c.person_id = p.id where coalesce(c.mail, true)`,
    Told,
  );
  await queueMail(
    unit,
    told.map(({ email, locale }) => {
      const { title, text } = noticeWords(kind, facts, locale);
      return { key: `${key} ${email}`, to: email, subject: title, body: text, link, locale };
    }),
  );
}
