import type { FindingCode } from './finding-catalogue.ts';

/** Wie ein Befund heißt und wie man hinsieht. */
export const findingTerms: Record<FindingCode, { name: string; look: string }> = {
  lance_flat: {
    name: 'Rastzunge flach oder fehlt',
    look: 'Die Rastzunge von der Seite ansehen. Liegt sie flach am Kontakt an oder ist sie abgebrochen?',
  },
  lance_intact: {
    name: 'Rastzunge unversehrt',
    look: 'Steht die Rastzunge frei, gerade und federnd wie an einem neuen Kontakt von der Rolle?',
  },
  lance_low: {
    name: 'Rastzunge niedriger als gezeichnet',
    look: 'Höhe der Zungenspitze über dem Kontaktboden messen und mit der Zeichnung vergleichen.',
  },
  terminal_bent: {
    name: 'Kontakt verbogen oder verdreht',
    look: 'Den Kontakt auf eine ebene Fläche legen. Ist er längs verbogen, verdreht oder gerollt?',
  },
  terminal_stretched: {
    name: 'Kontakt gestreckt',
    look: 'Länge hinter dem Kontaktkörper mit einem neuen Kontakt vergleichen. Ist der Übergang gestreckt oder eingeschnürt?',
  },
  same_deformation: {
    name: 'Gleiche Verformung an jedem Teil',
    look: 'Fünf oder mehr Kontakte desselben Stromkreises ansehen. Zeigen alle dieselbe Biegung, Delle oder Abflachung?',
  },
  mixed_deformation: {
    name: 'Verformung von Teil zu Teil verschieden',
    look: 'Fünf oder mehr Kontakte ansehen. Sind sie ohne Muster in verschiedene Richtungen gequetscht oder verbogen?',
  },
  carrier_tab_long: {
    name: 'Trägersteg zu lang',
    look: 'Die Trennstelle vorn und hinten ansehen. Steht ein Rest des Trägerstreifens über das Zeichnungsmaß hinaus?',
  },
  crimp_height_out: {
    name: 'Crimphöhe oder -breite außer Maß',
    look: 'Crimphöhe und -breite am Leiter mit der Crimp-Messschraube messen. Liegt eine außerhalb der Grenzen?',
  },
  wire_out_of_range: {
    name: 'Leitung außerhalb des Kontaktbereichs',
    look: 'Aus dem Bericht: Querschnitt der Leitung gegen den Bereich des Kontakts.',
  },
  witness_mark: {
    name: 'Spur einer verrasteten Lage',
    look: 'Zeigt eine Reibspur an Zunge, Rasthaken oder Kante, dass der Kontakt einmal verrastet war?',
  },
  reseats_and_holds: {
    name: 'Rastet nach mit Klick und hält',
    look: 'Den Kontakt von Hand ganz einschieben, auf den Klick hören, leicht an der Leitung ziehen. Hält er jetzt?',
  },
  depth_short: {
    name: 'Stecktiefe zu gering',
    look: 'Von der Steckseite bis zur Kontaktspitze messen. Liegt sie weiter zurück, als die Zeichnung erlaubt?',
  },
  insulation_blocks: {
    name: 'Isolation oder Dichtung im Weg',
    look: 'Sitzt Isolation, Dichtung oder Grat dort, wo der Kontakt bis zur Rastung durch muss?',
  },
  probe_mark: {
    name: 'Abdruck einer Prüfspitze',
    look: 'In den Kontakt sehen. Gibt es eine runde Delle, einen Kratzer oder eine blanke Stelle von einer Prüfspitze?',
  },
  contact_opened: {
    name: 'Kontakt aufgebogen oder geschoben',
    look: 'Ist die Kontaktfeder aufgebogen oder der Kontakt gerade von der Steckseite her zurückgeschoben?',
  },
  residue: {
    name: 'Rest von Kleber oder Lack',
    look: 'Nach Kleber, Heißkleber, Epoxid oder Lack an Kontakt, Rasthaken oder in der Kammer suchen, wenn möglich unter UV-Licht.',
  },
  no_float: {
    name: 'Kontakt ohne Spiel',
    look: 'Den Kontakt vorsichtig in der Kammer bewegen. Fehlt das kleine Spiel, das er haben soll?',
  },
  reworked_before: {
    name: 'Schon einmal nachgearbeitet',
    look: 'Zeigen Begleitkarte, Etikett oder Spuren, dass diese Stelle früher repariert oder ersetzt wurde?',
  },
  latch_whitened: {
    name: 'Rasthaken weiß verfärbt',
    look: 'Den Rasthaken gegen das Licht ansehen. Ist seine Wurzel durch Überlast weiß?',
  },
  latch_broken: { name: 'Rasthaken gebrochen', look: 'Ist der Rasthaken aus Kunststoff gerissen oder fehlt er?' },
  orientation_sheared: {
    name: 'Verdrehschutz abgeschert',
    look: 'Sind Rippe oder Ecke, die den Kontakt richtig herum halten, verschabt oder abgeschert?',
  },
  removal_marks: {
    name: 'Spuren eines Auswerfwerkzeugs',
    look: 'Gibt es Kratzer oder einen aufgehebelten Rasthaken, wo ein Auswerfwerkzeug eingeführt wurde?',
  },
  wrong_circuit: {
    name: 'Stromkreis in falscher Kammer',
    look: 'Leitungsfarbe und Aufdruck mit der Zeichnung vergleichen. Sitzt der Stromkreis in einer anderen Kammer?',
  },
  short_moulded: {
    name: 'Rasthaken nicht ausgespritzt',
    look: 'Den Rasthaken mit dem eines guten Gehäuses vergleichen. Ist er kurz, rund oder nicht gefüllt?',
  },
  flash_in_cavity: {
    name: 'Grat in der Kammer',
    look: 'In die Kammer sehen. Gibt es Spritzgrat an der Kante oder in der Gleitbahn des Kontakts?',
  },
  dimension_out: {
    name: 'Teilemaß außerhalb der Zeichnung',
    look: 'Kante, Rasthaken und Kammer vermessen lassen (die Zunge hat ihren eigenen Befund). Weist ein Messbericht ein Maß außerhalb der Toleranz aus?',
  },
  sharp_exit: {
    name: 'Leitung scharf abgewinkelt',
    look: 'Winkel zwischen Leitung und Kammerachse am Austritt messen, so wie eingebaut.',
  },
  tie_near: {
    name: 'Binder oder Klemme zu nah',
    look: 'Von der Gehäuserückseite bis zum ersten Binder, Band oder zur ersten Klemme messen.',
  },
  side_load: {
    name: 'Leitung zieht zur Seite',
    look: 'So wie eingebaut: Drückt die Leitung den Kontakt an eine Seite der Kammer?',
  },
  wire_short: {
    name: 'Leitung kurz oder gespannt',
    look: 'So wie eingebaut: Hat dieser Stromkreis keine Reserve, die Nachbarn aber schon?',
  },
  holds_when_freed: {
    name: 'Hält, sobald die Leitung frei ist',
    look: 'Den nächsten Binder öffnen und die Leitung gerade richten. Bleibt der Kontakt nun in seiner Lage?',
  },
  lock_open: {
    name: 'Sekundärverriegelung nicht geschlossen',
    look: 'Aus dem Bericht: Die Sekundärverriegelung war offen, mit Gewalt geschlossen, fehlte oder ließ sich nicht schließen.',
  },
  lock_would_not_close: {
    name: 'Sekundärverriegelung schließt nicht',
    look: 'Die Sekundärverriegelung von Hand schließen. Stößt sie vor ihrem Ende an?',
  },
  no_lock_called_for: {
    name: 'Geforderte Sekundärverriegelung fehlt',
    look: 'Fordert Zeichnung oder Verarbeitungsspezifikation eine Sekundärverriegelung, die diese Baugruppe nicht hat?',
  },
  same_tool_lately: {
    name: 'Gleiches Werkzeug in 14 Tagen',
    look: 'Aus den Daten: Andere Berichte nennen innerhalb von 14 Tagen dasselbe Werkzeug.',
  },
  tool_overdue: {
    name: 'Werkzeugwartung überfällig',
    look: 'Aus den Daten: Das Werkzeug lief seit der Wartung mehr Zyklen, als sein Intervall erlaubt.',
  },
  same_fixture_position: {
    name: 'Wieder gleiche Adapterposition',
    look: 'Aus den Daten: Andere Berichte der letzten 60 Tage nennen dieselbe Position des Prüfadapters.',
  },
  same_lot_elsewhere: {
    name: 'Gleiche Charge fällt anderswo auf',
    look: 'Aus den Daten: Rollen- oder Gehäusecharge steht in Berichten einer anderen Linie oder eines anderen Werks.',
  },
  outer_row: {
    name: 'Äußere Reihe des Gehäuses',
    look: 'Aus dem Bericht: Alle genannten Kammern liegen in einer äußeren Reihe oder Spalte.',
  },
  after_test: {
    name: 'Erst nach der elektrischen Prüfung gesehen',
    look: 'Aus dem Bericht: gefunden in einer Stufe nach der elektrischen Endprüfung.',
  },
  same_box_mixed_tools: {
    name: 'Gleicher Behälter, verschiedene Werkzeuge',
    look: 'Stammen die schlechten Leitungen aus einem Behälter, Gestell oder einer Rolle, obwohl verschiedene Pressen sie fertigten?',
  },
  force_below_minimum: {
    name: 'Haltekraft unter dem Mindestwert',
    look: 'Einen vergleichbaren Kontakt gleicher Charge und gleichen Werkzeugs spannungsfrei mit dem Kraftmesser ausziehen und mit dem Mindestwert vergleichen.',
  },
  load_above_rating: {
    name: 'Last über der Haltekraft',
    look: 'Den Zug an der Leitung in der ungünstigsten Einbaulage messen und mit dem Nennwert vergleichen.',
  },
};
