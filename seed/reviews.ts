/** Weekly reviews of the demo that were held: what was decided in each, and what became of it. */

export interface Decided {
  title: string;
  kind: 'containment' | 'corrective' | 'preventive';
  /** days after the review */
  dueAfter: number;
  /** days after the review on which it was carried out, or given up with a reason; neither: still open */
  doneAfter?: number;
  givenUp?: string;
}
export interface Held {
  /** the plant's code; null: the group */
  plant: string | null;
  /** how many weeks before the newest week that is due */
  weeksBack: number;
  decisions: readonly Decided[];
}

export const reviews: readonly Held[] = [
  {
    plant: 'LEJ',
    weeksBack: 6,
    decisions: [
      { title: 'Zugentlastung in die Verlegezeichnung aufnehmen', kind: 'preventive', dueAfter: 14, doneAfter: 12 },
    ],
  },
  {
    plant: 'LEJ',
    weeksBack: 5,
    decisions: [
      {
        title: 'Steckprobe Drücken-Klick-Ziehen an allen Plätzen der Linie 2',
        kind: 'corrective',
        dueAfter: 7,
        doneAfter: 10,
      },
    ],
  },
  { plant: 'LEJ', weeksBack: 4, decisions: [] },
  {
    plant: 'LEJ',
    weeksBack: 3,
    decisions: [
      { title: 'Prüfstifte der Endprüfung vermessen und tauschen', kind: 'corrective', dueAfter: 7 },
      { title: 'Sperrlager für die Gehäusecharge einrichten', kind: 'containment', dueAfter: 2, doneAfter: 1 },
    ],
  },
  {
    plant: 'LEJ',
    weeksBack: 2,
    decisions: [
      {
        title: 'Zweiten Lieferanten für Rollenware anfragen',
        kind: 'preventive',
        dueAfter: 21,
        givenUp: 'Die Ursache lag im Werkzeug, nicht in der Rolle.',
      },
      { title: 'Crimphöhe bei jedem Rollenwechsel aufzeichnen', kind: 'corrective', dueAfter: 10, doneAfter: 9 },
      {
        title: 'Kisten für angeschlagene Leitungen durch Gestelle ersetzen',
        kind: 'preventive',
        dueAfter: 8,
        doneAfter: 11,
      },
    ],
  },
  {
    plant: 'LEJ',
    weeksBack: 1,
    decisions: [{ title: 'Entstehungsstelle bei jeder Meldung eintragen', kind: 'preventive', dueAfter: 28 }],
  },
  {
    plant: null,
    weeksBack: 2,
    decisions: [{ title: 'Compare probe sizes of all end-of-line testers', kind: 'preventive', dueAfter: 5 }],
  },
  { plant: null, weeksBack: 1, decisions: [] },
];
