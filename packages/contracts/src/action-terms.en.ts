/** English words of actions; every other language has exactly these keys. */
import type { ActionKind, ActionState } from './actions.ts';
import type { EffectVerdict } from './effects.ts';

/** The columns of a list of actions. */
export type ActionField =
  | 'number'
  | 'plant'
  | 'kind'
  | 'title'
  | 'owner'
  | 'openedOn'
  | 'dueOn'
  | 'state'
  | 'stateReason'
  | 'closedOn'
  | 'daysOpen'
  | 'daysOverdue'
  | 'reopened'
  | 'effect';

type Labels<Word extends string> = Readonly<Record<Word, string>>;

export interface ActionTerms {
  readonly list: string;
  readonly calendar: string;
  readonly kind: Labels<ActionKind>;
  readonly state: Labels<ActionState>;
  readonly verdict: Labels<EffectVerdict>;
  readonly field: Labels<ActionField>;
  /** Why the service opened an action again. */
  readonly openedAgain: Labels<'verdict' | 'recurrence'>;
}

export const actionTerms: ActionTerms = {
  list: 'Actions',
  calendar: 'My actions',
  kind: {
    containment: 'Containment',
    corrective: 'Corrective',
    preventive: 'Preventive',
    read_across: 'Read-across',
  },
  state: {
    agreed: 'Agreed',
    under_way: 'Under way',
    held_up: 'Held up',
    carried_out: 'Carried out, to be verified',
    verified: 'Verified',
    given_up: 'Given up',
  },
  verdict: { held: 'Held', not_shown_yet: 'Not shown yet', did_not_hold: 'Did not hold' },
  field: {
    number: 'Number',
    plant: 'Plant',
    kind: 'Kind',
    title: 'Action',
    owner: 'Owner',
    openedOn: 'Opened',
    dueOn: 'Due',
    state: 'State',
    stateReason: 'Reason',
    closedOn: 'Closed',
    daysOpen: 'Days open',
    daysOverdue: 'Days overdue',
    reopened: 'Opened again',
    effect: 'Effect',
  },
  openedAgain: {
    verdict: 'Judged on {day}: it did not hold.',
    recurrence: 'It happened again: {reports}.',
  },
};
