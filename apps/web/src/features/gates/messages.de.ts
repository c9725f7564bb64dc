export const messages: MessageCatalogue['gates'] = {
  title: 'Wo die Prüfungen durchlassen',
  lead: 'Wie viel von dem, was sie erreicht, jede Prüfung findet, was ein Fehler je nach Entstehung kostet und wo bessere Entdeckung am meisten bringt.',
  money: {
    label: 'Gezählte Kosten',
    booked: 'Nur gebuchte Kosten',
    withEstimates: 'Gebuchte und geschätzte Kosten',
    bookedWords: 'gebuchte Kosten',
    estimatedWords: 'gebuchte und geschätzte Kosten: eine Schätzung',
  },
  next: {
    label: 'Wohin das nächste Geld gehört',
    clear: {
      money: 'Das nächste Geld bringt am meisten bei {{stage}} (Wahrscheinlichkeit {{chance}}).',
      point: 'Ein weiterer Prozentpunkt Entdeckung ist am meisten wert bei {{stage}} (Wahrscheinlichkeit {{chance}}).',
    },
    open: {
      money:
        'Die Daten unterscheiden diese Prüfungen nicht: {{stages}}. Bei einer davon bringt das nächste Geld am meisten.',
      point:
        'Die Daten unterscheiden diese Prüfungen nicht: {{stages}}. Bei einer davon ist ein weiterer Prozentpunkt Entdeckung am meisten wert.',
    },
    noCost:
      'Das gilt je Prozentpunkt Entdeckung, gleich was er kostet. Geben Sie unten an, was ein Punkt bei jeder Prüfung kostet, dann wird je ausgegebenem Geld verglichen.',
  },
  stat: {
    reports: 'Meldungen mit bekanntem Ursprung',
    reportsNote: 'im Zeitraum gefunden',
    withoutOrigin: 'Ohne bekannten Ursprung',
    open: 'Meldungen öffnen',
    maturity: 'Bisher gemeldete Feldfehler dieses Zeitraums',
    pattern_one: 'nach der Verzögerung von {{count}} Feldmeldung, bis {{day}}',
    pattern_other: 'nach der Verzögerung von {{count}} Feldmeldungen, bis {{day}}',
    undated: 'Feldmeldungen ohne Baudatum',
    dated_one: '{{count}} hat eines; der gemeldete Anteil ist entsprechend gesenkt',
    dated_other: '{{count}} haben eines; der gemeldete Anteil ist entsprechend gesenkt',
  },
  table: {
    title: 'Wie viel von dem, was sie erreicht, findet jede Prüfung?',
    spoken:
      'Wirksamkeit jeder Prüfung, wie gemeldet und mit dem noch ausstehenden Feld; die Tabelle darunter enthält die Zahlen.',
    axis: 'gefundener Anteil der Fehler, die die Prüfung erreichen',
    interval: '95 %: Clopper–Pearson wie gemeldet; Beta-Ziehungen mit ausstehendem Feld',
    words:
      'Wie gemeldet: hier gefunden ÷ (hier gefunden + später gefunden). Die zweite Zahl nimmt die Feldfehler dessen, was in diesem Zeitraum gebaut wurde, auch die noch nicht gemeldeten; so schmeichelt sie Prüfungen nicht, deren Versäumnisse noch nicht zurück sind. Misstrauen Sie einer Prüfung, deren Fehler oft keinen Ursprung haben, und der zweiten Zahl, wo wenige Feldmeldungen die Verzögerung zeigen.',
    caption:
      'Prüfungen in der Reihenfolge des Prozesses. Zahlen öffnen ihre Meldungen; Fehler unbekannten Ursprungs sind nicht enthalten.',
    gate: 'Prüfung',
    foundHere: 'Hier gefunden',
    foundLater: 'Später gefunden',
    raw: 'Wie gemeldet',
    field: 'Feld, im Zeitraum gebaut',
    toCome: 'Feld, steht noch aus',
    matured: 'Mit ausstehendem Feld',
    open: {
      foundHere: '{{count}} bei {{stage}} gefunden',
      foundLater: '{{count}} haben {{stage}} durchlaufen und wurden später gefunden',
      fieldBuilt: '{{count}} im Zeitraum gebaut, {{stage}} durchlaufen und aus dem Feld gemeldet',
    },
  },
  worth: {
    title: 'Was spart ein weiterer Prozentpunkt Entdeckung?',
    spoken:
      'Ersparnis im Jahr durch einen weiteren gefundenen Prozentpunkt, Prüfung für Prüfung, mit Intervallen; die Tabelle darunter enthält die Zahlen.',
    axis: 'Ersparnis im Jahr durch einen weiteren Prozentpunkt',
    interval: '95 %, Ziehungen mit festem Startwert; Kosten wie angegeben',
    words:
      'Ein Punkt mehr heißt: Von hundert Fehlern, die die Prüfung erreichen, wird einer dort statt weiter hinten gefunden. Wo sich Intervalle überdecken, lässt sich keine Reihenfolge bilden. Misstrauen Sie der Zahl bei großen Schritten: Sie gilt für den nächsten Punkt, und alle Prüfungen danach bleiben, wie sie sind.',
    caption:
      'Wert besserer Entdeckung. Tragen Sie ein, was ein Punkt im Jahr kostet, um Prüfungen je ausgegebenem Geld zu vergleichen.',
    faults: 'Fehler, die sie im Jahr erreichen',
    onePoint: 'Ein Punkt mehr spart im Jahr',
    cost: 'Ein Punkt kostet im Jahr',
    costOf: 'Was ein weiterer Prozentpunkt Entdeckung bei {{stage}} im Jahr kostet',
    perMoney: 'Ersparnis je Geldeinheit',
    best: 'Wahrscheinlichkeit, die beste zu sein',
  },
  made: {
    title: 'Was kostet ein Fehler, je nachdem wo er entsteht?',
    spoken: 'Erwartete Kosten eines Fehlers nach der Stufe, in der er entsteht, mit Intervallen.',
    axis: 'erwartete Kosten eines hier entstandenen Fehlers',
    caption: 'Erwartete Kosten eines Fehlers nach der Stufe, in der er entsteht',
    stage: 'Entstanden bei',
    cost: 'Erwartete Kosten',
    field: 'Erreicht das Feld',
    words:
      'Jede Prüfung findet ihren Anteil, der Rest geht weiter, und was alle durchläuft, kostet, was das Feld kostet (absorbierende Kette). Misstrauen Sie der Zahl, wo manche Fehler viel schwerer zu sehen sind als andere: Hier zählen alle Fehler an einer Prüfung gleich. Filtern Sie dann nach einer Ursache.',
  },
  found: {
    caption:
      'Was ein Fehler kostet, wo er gefunden wird: Mittel der im Zeitraum gefundenen Meldungen, die Kosten haben',
    stage: 'Gefunden bei',
    reports: 'Meldungen',
    standard: 'Standardkosten, dort wurde nichts gefunden',
    neighbour: 'hier keine Kosten bekannt: die der nächsten Prüfung',
    booked: 'Gebucht, Mittel',
    estimated: 'Geschätzt, Mittel',
  },
};
