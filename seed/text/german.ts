import type { Texts } from './texts.ts';

export const german: Texts = {
  seen: {
    tooling: [
      'Kontakt {cavity} hinter dem Crimp leicht nach oben gebogen, rastet nicht ein.',
      'Crimphöhe auffällig, mehrere Leitungen vom selben Werkzeug.',
      'Trägersteg zu lang, Kontakt steht in {cavity} vor.',
    ],
    handling: [
      'Rastlanze schon vor dem Bestücken flachgedrückt, Leitungen verknäult in der Kiste.',
      'Zwei Leitungen ineinander verhakt, Lanze seitlich verbogen.',
      'Rolle am Rand gequetscht, erste Kontakte verformt.',
    ],
    partial_seat: [
      'Kein Klick in {cavity}. Nachgedrückt, hält jetzt.',
      'Zweitverriegelung schließt erst, nachdem {cavity} nachgedrückt wurde.',
      'Kontakt etwa einen halben Millimeter zu kurz gesteckt, Rastung unbeschädigt.',
    ],
    misinsertion: [
      'Leitung in falscher Kammer, mit Nachbarkammer von {cavity} vertauscht.',
      'Kontakt verdreht in {cavity}, Rastfinger weiß verfärbt.',
      'Über den Anschlag gedrückt, Führungsrippe abgeschert.',
    ],
    probe_damage: [
      'Frischer Abdruck im Kontakt {cavity}, Kontakt aufgeweitet.',
      'Prüfung bestanden, danach lose.',
      'Steckkraft bei {cavity} deutlich kleiner als bei den Nachbarn.',
    ],
    wire_dress: [
      'Leitung bei {cavity} stark zur Seite gezogen, Kontakt schief. Hält, wenn die Leitung frei ist.',
      'Kabelbinder sitzt direkt hinter dem Gehäuse, keine Zugentlastung.',
      'Abzweig zu kurz, Stecker hängt an der Leitung.',
    ],
    adhesive: [
      'Rückstände hinter {cavity}, Kontakt ohne Spiel.',
      'Klarer Film in der Kammer, Rastfinger klebt offen.',
      'Klebestelle gerissen, Kontakt wandert bei leichtem Zug nach hinten.',
    ],
    component: [
      'Rastfinger in {cavity} zu kurz, nicht ausgespritzt.',
      'Lanze steht zu niedrig, Charge {lot}.',
      'Grat in {cavity}, Kontakt stößt zu früh an.',
    ],
    application_limit: [
      'Unter Vibration herausgewandert, Teile nach Zeichnung.',
      'Keine Zweitverriegelung an dieser Stelle, Last seitlich.',
      'Nach Wärmelagerung zurückgewandert, Haltekraft in Ordnung.',
    ],
  },
  proof: {
    tooling: [
      'Crimphöhe bei fünf von fünf Leitungen desselben Werkzeugs außer Toleranz.',
      'Gleiche Biegung an allen Teilen.',
    ],
    handling: ['Biegerichtung gemischt, kein gemeinsames Werkzeug.', 'Lanzen schon in der Kiste flach.'],
    partial_seat: ['Rastet mit Klick nach und hält 50 N.', 'Keine Spur an der Lanze, Tiefe zu gering.'],
    misinsertion: ['Durchgang vertauscht, Rastfinger weiß.', 'Führungsrippe abgeschert.'],
    probe_damage: ['Prüfspitzenabdruck unter dem Mikroskop; vor der Prüfung gut.', 'Immer dieselbe Adapterposition.'],
    wire_dress: ['Hält, sobald der Binder gelöst ist.', 'Rastung heil, Kontakt in Zugrichtung gekippt; äußere Reihe.'],
    adhesive: ['Rückstand im UV-Licht.', 'Kein Spiel, Klebung gerissen.'],
    component: ['Maßbericht der Charge liegt bei.', 'Immer dieselbe Kavität des Werkzeugs.'],
    application_limit: ['Haltekraft in Ordnung, gemessene Last liegt darüber.'],
  },
  outside: ['Kunde meldet Wackelkontakt. ', 'Rückläufer vom Kundenband. ', 'Werkstatt: Ausfall nach einigen Monaten. '],
  reason: ['Rückläufer untersucht.', 'Neuer Befund aus dem Labor.', 'Mit anderen Meldungen der Woche verglichen.'],
};
