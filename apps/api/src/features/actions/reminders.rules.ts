import type { NoticeKind } from '#contracts/notice-kinds.ts';

/** Days before the due day on which an owner is reminded. */
const ahead = 3;

export interface Reminder {
  kind: Extract<NoticeKind, 'action_due_soon' | 'action_due_today' | 'action_overdue'>;
  /** distinguishes the reminders of one due day; the same name is sent once */
  name: string;
}

/** The reminder that is due so many days before (negative: after) the due day. */
export function reminderOf(daysLeft: number): Reminder | null {
  if (daysLeft > ahead) return null;
  if (daysLeft > 0) return { kind: 'action_due_soon', name: 'soon' };
  if (daysLeft === 0) return { kind: 'action_due_today', name: 'today' };
  return { kind: 'action_overdue', name: `overdue week ${Math.floor((-daysLeft - 1) / 7)}` };
}
