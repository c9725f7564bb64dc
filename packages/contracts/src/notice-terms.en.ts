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
    text: 'Report {report} has the same part, cause and tool and was built after the clean point of “{title}”. {outcome}',
  },
  effect_verdict: {
    title: 'Effect of action {number}: {verdict}',
    text: '“{title}”: {verdict}. Look at the figures before you rely on it.',
  },
};

/** Words that facts stand for: `outcome`, `verdict`. */
export const noticeFacts: Readonly<Record<string, string>> = {
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
