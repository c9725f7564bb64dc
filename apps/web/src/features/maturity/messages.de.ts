export const messages: MessageCatalogue['maturity'] = {
  title: 'Feldreife',
  lead: 'Wie viel von dem, was gebaut ist, bei Kunden und im Feld bisher ausgefallen ist und wie viel noch kommt.',
  controls: { months: 'Baumonate', horizon: 'Vorschau' },
  span_one: '{{count}} Monat',
  span_other: '{{count}} Monate',
  perMillion: 'Meldungen je Million gebauter Einheiten',
  interval95: '95 %',
  none: 'Noch keine Meldungen von Kunden oder aus dem Feld',
  noneText: 'Das Dreieck braucht Meldungen mit der Quelle Kunde oder Feld und dem Tag, an dem das Teil gebaut wurde.',
  stat: {
    counted: 'Meldungen im Dreieck',
    until: 'gefunden bis {{day}}, dem letzten vollen Monat',
    toCome: 'Noch zu erwarten, alle Baumonate',
    standardError: 'Standardfehler {{error}}',
    forecast_one: 'Erwartet im nächsten Monat',
    forecast_other: 'Erwartet in den nächsten {{count}} Monaten',
    forecastNote: 'aus dem, was schon gebaut ist',
    left: 'Nicht enthalten',
    short: 'erwartete Zahlen sind rund {{share}} zu niedrig, weil Baudaten fehlen',
  },
  left: {
    no_build_date_one: '{{count}} Meldung ohne Baudatum: Sie lässt sich nicht einordnen',
    no_build_date_other: '{{count}} Meldungen ohne Baudatum: Sie lassen sich nicht einordnen',
    built_earlier_one:
      '{{count}} Meldung zu Teilen, die vor {{month}} gebaut wurden: Dieser Baumonat wurde nicht von Anfang an verfolgt',
    built_earlier_other:
      '{{count}} Meldungen zu Teilen, die vor {{month}} gebaut wurden: Diese Baumonate wurden nicht von Anfang an verfolgt',
  },
  months: {
    title: 'Welche Baumonate fallen häufiger aus, wenn alle ihre Ausfälle da sind?',
    spoken:
      'Meldungen je Million Einheiten nach Baumonat, bisher und am Ende erwartet; die Tabelle darunter enthält die Zahlen.',
    soFar: 'bisher (grau schraffiert: zu jung zum Vergleichen)',
    expected: 'am Ende erwartet',
    interval: '95 %, Poisson, das Muster der Verzögerung als bekannt angenommen',
    words:
      'Vergleichen Sie Baumonate am Punkt, nie am Balken: Junge Monate hatten nur weniger Zeit auszufallen. Misstrauen Sie den Punkten schraffierter Monate, die auf wenigen Meldungen ruhen, und allen, wenn Ausfälle heute schneller oder langsamer eingehen als früher.',
    caption: 'Baumonate, der jüngste zuerst. Schraffiert: Weniger als 80 % der erwarteten Meldungen sind da.',
    month: 'Baumonat',
    produced: 'Gebaute Einheiten',
    reports: 'Meldungen bisher',
    young: 'zu jung zum Vergleichen',
    maturity: 'Anteil gemeldet',
    final: 'Am Ende erwartet',
    error: 'Standardfehler',
    perMillion: 'Erwartet je Million',
  },
  triangle: {
    label: 'Dreieck der Monate im Einsatz',
    caption:
      'Dreieck der Monate im Einsatz: Meldungen nach Baumonat, die so viele Monate nach dem Bau gefunden waren, aufaddiert. Jede Zahl öffnet ihre Meldungen.',
    corner: 'Gebaut ↓ · Monate danach →',
    cell: 'Gebaut {{month}}, gefunden bis {{age}} Monate danach: {{count}} Meldungen',
    words:
      'Eine Zeile zeigt von links nach rechts, wie ein Baumonat altert, eine Spalte von oben nach unten Monate im gleichen Alter. Die erwarteten Endzahlen übertragen das Wachstum der älteren Zeilen auf die jüngeren (Chain-Ladder, Standardfehler nach Mack). Das älteste gesehene Alter gilt als Ende: Was danach kommt, fehlt.',
  },
  life: {
    title: {
      falls: 'Wie lange halten Teile? Ausfälle kommen früh und werden dann seltener',
      rises: 'Wie lange halten Teile? Sie verschleißen: Ausfälle häufen sich mit dem Alter',
      steady: 'Wie lange halten Teile? Ausfälle kommen in jedem Alter etwa gleich oft',
      unknown: 'Wie lange halten Teile?',
    },
    spoken: 'Anteil der gebauten Einheiten, der ausgefallen ist, nach Monaten im Einsatz, gezählt und angepasst.',
    seen: 'gezählt (Kaplan–Meier)',
    limits: 'dessen 95-%-Grenzen',
    fitted: 'angepasste Weibull-Kurve',
    months: 'Monate seit dem Bau',
    month_one: '{{count}} Monat',
    month_other: '{{count}} Monate',
    beyond_one: '{{count}} Monat (länger als alles Gesehene)',
    beyond_other: '{{count}} Monate (länger als alles Gesehene)',
    failed: 'Bis dahin ausgefallen, je Million Einheiten (Weibull)',
    caption: 'Anteil ausgefallen nach Monaten seit dem Bau, aus der angepassten Kurve',
    words:
      'Aus {{reports}} Ausfällen unter {{units}} gebauten Einheiten; die noch guten zählen bis zu ihrem Alter (rechts zensiert).',
    shape: 'Weibull-Form',
    grows: {
      falls: 'Unter 1: Fehler, die von Anfang an im Teil waren, kein Verschleiß.',
      rises: 'Über 1: Verschleiß oder Lockern im Gebrauch.',
      steady: 'Etwa 1: Weder frühe Fehler noch Verschleiß stechen hervor.',
    },
    distrust:
      'Die Zeit läuft ab dem Bau, nicht ab dem ersten Gebrauch. Misstrauen Sie der Kurve jenseits der letzten Stufe und wo mehrere Ursachen gemischt sind: Filtern Sie erst nach einer Ursache.',
  },
  forecast: {
    title_one: 'Wie viele Ausfälle gehen im nächsten Monat ein?',
    title_other: 'Wie viele Ausfälle gehen in den nächsten {{count}} Monaten ein?',
    spoken: 'Erwartete Meldungen in jedem kommenden Monat, mit Intervallen.',
    expected: 'erwartet',
    axis: 'Meldungen im Monat',
    words:
      'Nur aus bereits gebauten Einheiten; was ab jetzt gebaut wird, kommt hinzu. Misstrauen Sie der Vorschau, wenn eine Abstellmaßnahme oder ein neuer Fehler die Rate zwischen den Baumonaten verändert hat.',
    rate: 'Über alle Baumonate am Ende, Meldungen je Million Einheiten:',
  },
};
