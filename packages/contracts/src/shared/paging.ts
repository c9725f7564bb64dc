import { z } from 'zod';

/** Keyset paging: pass `next` back as `cursor`. Never an offset. */
export const PageQuery = z.object({
  cursor: z.string().max(400).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});
export type PageQuery = z.infer<typeof PageQuery>;

export const page = <Item extends z.ZodType>(item: Item) =>
  z.object({ items: z.array(item), next: z.string().nullable().describe('cursor of the next page, null at the end') });
