import type { ActionTerms } from './action-terms.en.ts';

export const actionTerms: ActionTerms = {
  list: 'Maßnahmen',
  calendar: 'Meine Maßnahmen',
  kind: {
    containment: 'Eindämmung',
    corrective: 'Abstellmaßnahme',
    preventive: 'Vorbeugung',
    read_across: 'Übertragung',
  },
  state: {
    agreed: 'Vereinbart',
    under_way: 'In Arbeit',
    held_up: 'Aufgehalten',
    carried_out: 'Durchgeführt, zu prüfen',
    verified: 'Geprüft',
    given_up: 'Aufgegeben',
  },
  verdict: { held: 'Hat gewirkt', not_shown_yet: 'Noch nicht gezeigt', did_not_hold: 'Hat nicht gewirkt' },
  field: {
    number: 'Nummer',
    plant: 'Werk',
    kind: 'Art',
    title: 'Maßnahme',
    owner: 'Verantwortlich',
    openedOn: 'Eröffnet',
    dueOn: 'Fällig',
    state: 'Stand',
    stateReason: 'Grund',
    closedOn: 'Abgeschlossen',
    daysOpen: 'Tage offen',
    daysOverdue: 'Tage überfällig',
    reopened: 'Wieder eröffnet',
    effect: 'Wirkung',
  },
  openedAgain: {
    verdict: 'Beurteilt am {day}: Sie hat nicht gewirkt.',
    recurrence: 'Es ist wieder passiert: {reports}.',
  },
};
