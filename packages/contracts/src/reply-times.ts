/** The replies a customer waits for, and how long each may take. */
import { z } from 'zod';

export const replies = ['first_reply', 'containment', 'cause', 'corrective_action'] as const;
export type Reply = (typeof replies)[number];
export const timeUnits = ['hours', 'days'] as const;

/** Working hours run while the plant works; a working day ends when the plant closes on that day. */
export const ReplyTime = z
  .object({ amount: z.int().min(1).max(1000), unit: z.enum(timeUnits) })
  .refine((it) => it.unit === 'hours' || it.amount <= 250, { path: ['amount'], message: 'must be at most 250 days' });
export type ReplyTime = z.infer<typeof ReplyTime>;
export const ReplyTimes = z.object({
  first_reply: ReplyTime,
  containment: ReplyTime,
  cause: ReplyTime,
  corrective_action: ReplyTime,
});
export type ReplyTimes = z.infer<typeof ReplyTimes>;

/** Common practice, no source; each customer’s own are set in the master data. */
export const usualReplyTimes: ReplyTimes = {
  first_reply: { amount: 1, unit: 'days' },
  containment: { amount: 2, unit: 'days' },
  cause: { amount: 10, unit: 'days' },
  corrective_action: { amount: 20, unit: 'days' },
};
