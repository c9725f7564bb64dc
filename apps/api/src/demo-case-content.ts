import type { CaseContent, ProofLink } from '#contracts/case-parts.ts';
import type { CasePlan } from '#seed/cases.ts';

const seen = 'Tried on ten parts with the team; it came out so every time.';

/** A chain of whys; its end rests on a report where there is one. */
const chain = (texts: readonly string[], name: string, failureId: string | null) => ({
  nodes: texts.map((text, place) => {
    const end = place === texts.length - 1;
    const proof: ProofLink[] = failureId
      ? [
          { kind: 'report', failureId },
          { kind: 'test', text: seen },
        ]
      : [{ kind: 'test', text: seen }];
    return {
      id: `${name}-${place}`,
      parent: place === 0 ? null : `${name}-${place - 1}`,
      text,
      proof: end ? proof : [],
      ruledOut: false,
    };
  }),
});
const endOf = (texts: readonly string[], name: string) => (texts.length > 0 ? `${name}-${texts.length - 1}` : null);
const last = (texts: readonly string[]) => texts.at(-1) ?? '';

/** What the team of a demo case wrote. */
export function caseContent(
  plan: CasePlan,
  engineer: string,
  manager: string,
  failureId: string | null,
  day: (days: number) => string,
): Omit<CaseContent, 'document'> {
  const german = plan.plant === 'LEJ';
  const say = (english: string, deutsch: string) => (german ? deutsch : english);
  const [correction, detection, rejected] = plan.corrections;
  const aspects = [
    ['what', plan.title, say('other parts of the line', 'andere Teile der Linie')],
    ['where', `${plan.plant} ${plan.line}`, say('other lines', 'andere Linien')],
    ['when', say(`since about ${day(-20)}`, `seit etwa ${day(-20)}`), say('before that', 'davor')],
    ['extent', say('some parts of every batch', 'einige Teile je Los'), say('all parts', 'alle Teile')],
  ] as const;
  return {
    plan: {
      symptom: plan.symptom,
      emergency: say('Stock stopped, the customer told.', 'Bestand gesperrt, Kunde benachrichtigt.'),
      why: say(
        'The cause is not known and the fault left the plant.',
        'Die Ursache ist unbekannt, und der Fehler hat das Werk verlassen.',
      ),
    },
    team: {
      members: [
        { id: 'member-1', name: engineer, role: 'leader', company: null },
        { id: 'member-2', name: manager, role: 'sponsor', company: null },
      ],
    },
    problem: {
      statement: plan.symptom,
      rows: aspects.map(([aspect, is, isNot]) => ({
        id: `row-${aspect}`,
        aspect,
        is,
        isNot,
        difference: '',
        change: '',
      })),
    },
    timeline: {
      events: [
        { id: 'event-1', on: day(-20), text: say('First report', 'Erste Meldung') },
        { id: 'event-2', on: day(0), text: say('Case opened', 'Fall eröffnet') },
        { id: 'event-3', on: day(8), text: say('Stock sorted', 'Bestand sortiert') },
      ],
    },
    containment: {
      summary: say('Stock and goods in transit sorted.', 'Bestand und Ware unterwegs sortiert.'),
      verification: say('No further find in the second sorting.', 'Kein weiterer Fund beim zweiten Sortieren.'),
      ...{ cleanPoint: day(8), cleanMark: say('green dot', 'grüner Punkt'), notNeeded: null },
    },
    occurrence: chain(plan.occurrence, 'occurrence', failureId),
    non_detection: chain(plan.nonDetection, 'detection', failureId),
    system: chain(plan.system, 'system', null),
    root_cause: {
      occurrence: {
        ...{ nodeId: endOf(plan.occurrence, 'occurrence'), statement: last(plan.occurrence) },
        ...{ cause: plan.cause, subCause: plan.subCause, origin: plan.origin },
      },
      escape: { nodeId: endOf(plan.nonDetection, 'detection'), statement: last(plan.nonDetection), stage: plan.escape },
      system: { nodeId: endOf(plan.system, 'system'), statement: last(plan.system) },
      verification: say('The fault was switched on and off twice.', 'Der Fehler wurde zweimal ein- und ausgeschaltet.'),
    },
    corrections: {
      options: [
        {
          id: 'option-1',
          against: 'occurrence',
          text: correction,
          chosen: true,
          reason: say('Acts where the fault is made.', 'Wirkt, wo der Fehler entsteht.'),
        },
        {
          id: 'option-2',
          against: 'non_detection',
          text: detection,
          chosen: true,
          reason: say('Sees it at the first gate.', 'Erkennt es an der ersten Prüfung.'),
        },
        {
          id: 'option-3',
          against: 'occurrence',
          text: rejected,
          chosen: false,
          reason: say('Does not remove the cause.', 'Beseitigt die Ursache nicht.'),
        },
      ].filter(({ text }) => text !== '') as CaseContent['corrections']['options'],
    },
    validation: {
      summary: correction,
      effectiveFrom: day(18),
      withoutVerdict: say(
        'The customer’s time ends before production has supplied the proof.',
        'Die Frist des Kunden endet, bevor die Produktion den Nachweis liefert.',
      ),
    },
    prevention: {
      systems: plan.prevention,
      documents: [
        {
          id: 'document-1',
          kind: 'control_plan',
          name: `${plan.plant} ${plan.line}`,
          revision: 'C',
          changedOn: day(21),
        },
      ],
      noDocuments: null,
    },
    reach: {
      toolTypes: [...plan.toolTypes],
      housingIds: [],
      terminalIds: [],
      practice: plan.practice,
      notNeeded: null,
    },
    lesson: {
      title: plan.title,
      problem: plan.symptom,
      rootCause: last(plan.occurrence),
      check: plan.check,
      notNeeded: null,
    },
    closure: {
      summary: say(
        'No further report of the kind since the correction.',
        'Seit der Abstellung keine weitere Meldung dieser Art.',
      ),
      thanks: say('To the whole shift.', 'An die ganze Schicht.'),
    },
  };
}
