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
    text: 'Dasselbe Teil, dieselbe Ursache und dasselbe Werkzeug, gebaut nach dem Sauberpunkt von „{title}“: {reports}. {outcome}',
  },
  effect_verdict: {
    title: 'Wirkung von Maßnahme {number}: {verdict}',
    text: '„{title}“: {verdict}. Vor dem Weitergeben die Zahlen ansehen.',
  },
  complaint_safety: {
    title: 'Sicherheitsrelevante Reklamation {number}',
    text: '{customer}: „{title}“. Sehen Sie sie sich jetzt an und bestätigen Sie das. Über Versand oder Rückruf wird hier nichts entschieden.',
  },
  complaint_owner: {
    title: 'Reklamation {number} liegt bei Ihnen',
    text: '{customer}: „{title}“. Die Antwortfristen laufen.',
  },
  clock_handed_over: {
    title: 'Eine Antwort zu {number} liegt bei Ihnen: {reply}',
    text: '{by} hat sie Ihnen übergeben. Sie ist am {due} um {time} Uhr Werkszeit fällig.',
  },
  clock_short: {
    title: '{number}: Die Zeit für „{reply}“ wird knapp',
    text: '{customer}: „{title}“. Weniger als ein Viertel der Arbeitszeit bleibt: fällig am {due} um {time} Uhr Werkszeit.',
  },
  clock_urgent: {
    title: '{number}: „{reply}“ droht zu spät zu kommen',
    text: '{customer}: „{title}“. {owner} schuldet die Antwort bis {due}, {time} Uhr Werkszeit; weniger als ein Zehntel der Arbeitszeit bleibt.',
  },
  consent_asked: {
    title: 'Ihre Zustimmung wird erbeten: {number}',
    text: '{by}: „{reason}“. Eine sicherheitsrelevante Reklamation braucht das Wort einer zweiten Person.',
  },
  consent_answered: {
    title: '{number}: {answer}',
    text: '{by} hat Ihre Anfrage beantwortet.',
  },
  containment_alert: {
    title: 'Werk {from} hält Teile zurück, die auch Ihres betreffen können',
    text: '{number}: {parts}. Prüfen Sie Ihren Bestand und antworten Sie, ob Ihr Werk betroffen ist.',
  },
  containment_answer: {
    title: '{number}: Werk {from} antwortet',
    text: '{affected}: „{answer}“',
  },
};

export const noticeFacts: Readonly<Record<string, string>> = {
  reply_first_reply: 'erste Antwort',
  reply_containment: 'Eindämmung',
  reply_cause: 'Ursache',
  reply_corrective_action: 'Abstellmaßnahme',
  consent_given: 'Zustimmung erteilt',
  consent_refused: 'Zustimmung verweigert',
  affected: 'Betroffen',
  not_affected: 'Nicht betroffen',
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
