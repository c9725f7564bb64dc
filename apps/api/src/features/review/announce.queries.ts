import { z } from 'zod';
import { Locale } from '#contracts/shared/scalars.ts';
import type { Tx } from '#db/client.ts';
import { type Sql, sql, txRows } from '#db/sql.ts';
import type { Scope } from './scope.rules.ts';

const Subscriber = z.object({ id: z.string(), email: z.string(), locale: Locale });
export type Subscriber = z.infer<typeof Subscriber>;

const readable = (scope: Scope): Sql =>
  scope.group
    ? sql`exists (select from role_grant g where g.person_id = p.id and g.plant_id is null)`
    : sql`exists (select from role_grant g where g.person_id = p.id and (g.plant_id is null or g.plant_id = s.plant_id))`;

/** People who asked for the review of this plant or of the group, and may read it still. Every role may read reviews. */
export const subscribersOf = (tx: Tx, scope: Scope): Promise<Subscriber[]> =>
  txRows(
    tx,
    sql`select p.id, p.email, p.locale from review_subscription s join person p on p.id = s.person_id
      where p.retired_at is null and s.plant_id is not distinct from ${scope.group ? null : scope.plantIds[0]!}::uuid
        and ${readable(scope)} order by p.id`,
    Subscriber,
  );
