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
  'complaint_safety',
  'complaint_owner',
  'clock_handed_over',
  'clock_short',
  'clock_urgent',
  'consent_asked',
  'consent_answered',
  'containment_alert',
  'containment_answer',
] as const;
export type NoticeKind = (typeof noticeKinds)[number];
