import { z } from 'zod';

/** RFC 9457 problem document. `code` is stable and names the catalogue entry; `errors` points into the request. */
export const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string().describe('what is wrong and what to do about it'),
  code: z.string(),
  instance: z.string().optional(),
  errors: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
});
export type Problem = z.infer<typeof Problem>;
