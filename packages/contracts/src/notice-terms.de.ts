import type { NoticeKind } from './notice-kinds.ts';
import type { mailTerms as english, NoticeWords } from './notice-terms.en.ts';

export const noticeTerms: Readonly<Record<NoticeKind, NoticeWords>> = {
  action_assigned: {
    title: 'Maßnahme {number} liegt bei Ihnen, fällig am {due}',
    text: '{by} hat Ihnen „{title}“ zugewiesen.',
  },
  action_to_verify: {
    title: 'Maßnahme {number} wartet auf ihre Prüfung',
    text: '{by} hat „{title}“ durchgeführt. Jemand anderes als die verantwortliche Person sieht sich die Nachweise an und prüft sie.',
  },
  action_sent_back: {
    title: 'Maßnahme {number} hat die Prüfung nicht bestanden',
    text: '„{title}“: {reason}',
  },
  action_due_soon: {
    title: 'Maßnahme {number} ist am {due} fällig',
    text: '„{title}“ ist noch offen.',
  },
  action_due_today: {
    title: 'Maßnahme {number} ist heute fällig',
    text: '„{title}“ sollte bis {due} durchgeführt sein.',
  },
  action_overdue: {
    title: 'Maßnahme {number} ist seit {days} Tagen überfällig',
    text: '„{title}“ war am {due} fällig. Durchführen, einen anderen Tag vereinbaren oder sagen, warum sie entfällt.',
  },
  action_recurrence: {
    title: 'Nach Maßnahme {number} ist es wieder passiert',
    text: 'Meldung {report} hat dasselbe Teil, dieselbe Ursache und dasselbe Werkzeug und wurde nach dem Sauberpunkt von „{title}“ gebaut. {outcome}',
  },
  effect_verdict: {
    title: 'Wirkung von Maßnahme {number}: {verdict}',
    text: '„{title}“: {verdict}. Vor dem Weitergeben die Zahlen ansehen.',
  },
};

export const noticeFacts: Readonly<Record<string, string>> = {
  reopened: 'Die Maßnahme ist wieder offen.',
  told: 'Die Maßnahme bleibt, wie sie ist.',
  held: 'hat gewirkt',
  not_shown_yet: 'noch nicht gezeigt',
  did_not_hold: 'hat nicht gewirkt',
};

export const mailTerms: typeof english = {
  open: 'Öffnen: {url}',
  why: {
    account:
      'Sie erhalten diese E-Mail, weil es in Ihrem Konto bei Escape Ledger so eingestellt ist. Abschalten unter „Mein Konto“.',
    subscription:
      'Sie erhalten diese E-Mail, weil Sie sich diese Besprechung zuschicken lassen. Ändern unter der Besprechung.',
  },
};
