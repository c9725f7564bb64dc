import type { NoticeKind } from './notice-kinds.ts';

export interface NoticeWords {
  readonly title: string;
  readonly text: string;
}

/** Short enough for a list and a mail's subject; then the sentence that says what to do. */
export const noticeTerms: Readonly<Record<NoticeKind, NoticeWords>> = {
  action_assigned: {
    title: 'Action {number} is yours, due {due}',
    text: '{by} made you the owner of “{title}”.',
  },
  action_to_verify: {
    title: 'Action {number} waits to be verified',
    text: '{by} carried out “{title}”. Somebody other than the owner looks at the evidence and verifies it.',
  },
  action_sent_back: {
    title: 'Action {number} did not pass its verification',
    text: '“{title}”: {reason}',
  },
  action_due_soon: {
    title: 'Action {number} is due on {due}',
    text: '“{title}” is still open.',
  },
  action_due_today: {
    title: 'Action {number} is due today',
    text: '“{title}” was to be carried out by {due}.',
  },
  action_overdue: {
    title: 'Action {number} is overdue by {days} days',
    text: '“{title}” was due on {due}. Carry it out, agree on another day, or say why it will not be done.',
  },
  action_recurrence: {
    title: 'It happened again after action {number}',
    text: 'Same part, cause and tool, built after the clean point of “{title}”: {reports}. {outcome}',
  },
  effect_verdict: {
    title: 'Effect of action {number}: {verdict}',
    text: '“{title}”: {verdict}. Look at the figures before you rely on it.',
  },
  complaint_safety: {
    title: 'Safety-relevant complaint {number}',
    text: '{customer}: “{title}”. Look at it now and acknowledge it. Nothing is decided here about shipping or a recall.',
  },
  complaint_owner: {
    title: 'Complaint {number} is yours',
    text: '{customer}: “{title}”. The reply clocks run.',
  },
  clock_handed_over: {
    title: 'A reply to {number} is yours: {reply}',
    text: '{by} handed it to you. It is due on {due} at {time}, plant time.',
  },
  clock_short: {
    title: '{number}: time for “{reply}” runs short',
    text: '{customer}: “{title}”. Less than a quarter of the working time is left: due on {due} at {time}, plant time.',
  },
  clock_urgent: {
    title: '{number}: “{reply}” is about to be late',
    text: '{customer}: “{title}”. {owner} owes the reply by {due}, {time}, plant time; less than a tenth of the working time is left.',
  },
  consent_asked: {
    title: 'Your consent is asked for: {number}',
    text: '{by}: “{reason}”. A safety-relevant complaint needs the word of a second person.',
  },
  consent_answered: {
    title: '{number}: {answer}',
    text: '{by} answered what you asked for.',
  },
  containment_alert: {
    title: 'Plant {from} holds back parts that yours shares',
    text: '{number}: {parts}. Check your own stock and answer whether your plant is affected.',
  },
  containment_answer: {
    title: '{number}: plant {from} answers',
    text: '{affected}: “{answer}”',
  },
};

/** Words that facts stand for: `outcome`, `verdict`. */
export const noticeFacts: Readonly<Record<string, string>> = {
  reply_first_reply: 'first reply',
  reply_containment: 'containment',
  reply_cause: 'cause',
  reply_corrective_action: 'corrective action',
  consent_given: 'consent given',
  consent_refused: 'consent refused',
  affected: 'Affected',
  not_affected: 'Not affected',
  reopened: 'The action is open again.',
  told: 'The action stays as it is.',
  held: 'held',
  not_shown_yet: 'not shown yet',
  did_not_hold: 'did not hold',
};

export const mailTerms = {
  open: 'Open it: {url}',
  why: {
    account:
      'You get this mail because your account on Escape Ledger has it switched on. Switch it off under “My account”.',
    subscription: 'You get this mail because you chose to be sent this review. Choose otherwise below the review.',
  },
};
