import type { messages as english } from './messages.en.ts';

export const messages: typeof english = {
  title: 'Lehren und Übertragung',
  lead: 'Was abgeschlossene Fälle gelehrt haben, in neutralen Worten, und was andere Werke hier zu prüfen bitten.',
  asked: 'Fragen an Ihre Werke',
  askedText:
    'Anderswo wurde ein Fall abgeschlossen. Sagen Sie, ob er hier zutrifft: dann wird eine Maßnahme eröffnet. Wenn nicht, sagen Sie warum.',
  noneAsked: 'Keine Fragen',
  noneAskedText:
    'Wird in einem anderen Werk ein Fall mit gleichem Werkzeugtyp, Teil oder gleicher Praxis abgeschlossen, wird hier gefragt.',
  lessons: 'Lehren',
  search: 'Lehren durchsuchen',
  none: 'Hier sind keine Lehren',
  noneText: 'Lehren kommen aus abgeschlossenen Fällen. Versuchen Sie weniger oder andere Wörter.',
  more: 'Mehr',
  from: '{{plant}}, {{cause}}, {{at}}',
  askedBy: '{{from}} fragt {{plant}}, {{at}}, wegen:',
  because: {
    tool_type: 'gleicher Werkzeugtyp',
    housing: 'gleiches Gehäuse',
    terminal: 'gleicher Kontakt',
    practice: 'gleiche Praxis',
  },
  problem: 'Problem',
  rootCause: 'Grundursache',
  check: 'Was zu prüfen ist',
  answer: 'Antwort',
  answers: { applies: 'Trifft zu: Maßnahme', does_not_apply: 'Trifft nicht zu' },
  whatDone: 'Was getan wird',
  whyNot: 'Warum es nicht zutrifft',
  owner: 'Wer es tut',
  due: 'Fällig',
  send: 'Antworten',
  action: 'Maßnahme öffnen',
  offered: 'Bei Ähnlichem schon gelernt',
  like: {
    housing: 'gleiches Gehäuse',
    terminal: 'gleicher Kontakt',
    cause: 'gleiche Ursache',
    effect: 'gleiche Wirkung',
    words: 'ähnliche Worte',
  },
};
