import { z } from 'zod';
import { sql } from '#db/sql.ts';

export const PlantDay = z.object({ code: z.string(), today: z.string(), locale: z.string(), retired: z.boolean() });
export type PlantDay = z.infer<typeof PlantDay>;
export const Running = z.object({ last: z.int() });

/** A plant's code and the day it is there. */
export const plantDaySql = (plantId: string, at: Date) =>
  sql`select p.code, (${at}::timestamptz at time zone p.zone)::date::text as today, p.locale, p.retired_at is not null as retired
    from plant p where p.id = ${plantId}::uuid`;
