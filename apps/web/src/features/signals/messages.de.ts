export const messages: MessageCatalogue['signals'] = {
  title: 'Auffälligkeiten',
  lead: 'Teile, Werkzeuge, Chargen, Plätze in Prüfaufnahmen und Kammern, die öfter ausfallen, als sie sollten; der größte Überschuss zuerst.',
  none: 'Nichts fällt öfter aus, als es sollte',
  noneText:
    '{{tested}} Kombinationen wurden betrachtet; keine fällt auf, weder über den Zufall hinaus noch über das, worin sich solche gewöhnlich unterscheiden.',
  more_one:
    'Eine weitere Auffälligkeit mit kleinerem Überschuss ist nicht aufgeführt; mit engerem Filter erscheint sie.',
  more_other:
    '{{count}} weitere Auffälligkeiten mit kleinerem Überschuss sind nicht aufgeführt; mit engerem Filter erscheinen sie.',
  meaning:
    '{{tested}} Kombinationen in {{reports}} Meldungen wurden betrachtet. Im Mittel sind höchstens {{rate}} der Auffälligkeiten Fehlalarme. Eine Auffälligkeit sagt, wo zu suchen ist, nicht warum; misstrauen Sie ihr, wo Werkzeuge oder Chargen nur bei Verdacht genannt werden.',
  withoutExpectation_one: 'Für eine Kombination gibt es weder Produktion noch etwas Vergleichbares.',
  withoutExpectation_other: 'Für {{count}} Kombinationen gibt es weder Produktion noch etwas Vergleichbares.',
  reports_one: '{{count}} Meldung',
  reports_other: '{{count}} Meldungen',
  open_one: '{{count}} Meldung: {{name}}',
  open_other: '{{count}} Meldungen: {{name}}',
  basis: {
    exposure: 'erwartet aus den gesteckten Kontakten; Intervall {{confidence}}',
    share:
      'erwartet als gleicher Anteil von {{peers}}, weil die Produktion darüber nichts sagt; Intervall {{confidence}}',
  },
  since: {
    steady: 'keine Änderung in den betrachteten Wochen',
    unknown: 'nicht zu datieren: zu wenig Produktion bekannt',
  },
  back: 'galt als „nichts Neues“ und ist seitdem gewachsen',
  echoes_one: 'Dadurch erklärt: eine weitere',
  echoes_other: 'Dadurch erklärt: {{count}} weitere',
  shared_one: '{{count}} davon in beiden.',
  shared_other: '{{count}} davon in beiden.',
  silence: {
    press: 'Nichts Neues',
    title: 'Nichts Neues: {{name}}',
    rule: 'Sie wird bis zum gewählten Tag verborgen. Sie kommt früher zurück, wenn die untere Grenze ihres Verhältnisses über das heutige Verhältnis steigt. Alle sehen, wer sie warum stillgelegt hat.',
    reason: 'Warum es nichts Neues ist',
    until: 'Bis',
    cancel: 'Abbrechen',
  },
  silenced: {
    title: 'Als „nichts Neues“ eingestuft',
    facts: '{{reason}} ({{by}}, bis {{until}}; damals {{observed}} Meldungen, das {{ratio}}-Fache des Erwarteten)',
    end: 'Wieder melden',
  },
};
