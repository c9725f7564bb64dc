/** What people are told. The words are in `notice-terms.*.ts`; `{name}` there stands for a fact given with the notice. */
export const noticeKinds = [
  'action_assigned',
  'action_to_verify',
  'action_sent_back',
  'action_due_soon',
  'action_due_today',
  'action_overdue',
  'action_recurrence',
  'effect_verdict',
] as const;
export type NoticeKind = (typeof noticeKinds)[number];
